import { useMemo } from "react";
import { type OrderSheet, orderSheet } from "../../../studies/order/orderSheet.ts";
import { orderStandsSentence } from "../../../studies/wording/orderOnPage.ts";
import { useCatalogs } from "../../parts/catalogs/shippedCatalogs.ts";
import { jumpTo } from "../../parts/JumpBar.tsx";
import type { Truck } from "../../state/truck.ts";

/** The order of a truck worked out with the catalogs there are; null = it has none. As bolted on: alignment changes no order. */
export function useOrderSheet(truck: Truck): OrderSheet | null {
  const catalogs = useCatalogs();
  const { setup } = truck.bolted;
  const { file } = truck;
  return useMemo(() => orderSheet(setup, catalogs, file), [setup, catalogs, file]);
}

/** At the head of what the shop works by: that it goes by the truck while its order says something else, and the way to it. */
export function OrderAhead({ truck }: { truck: Truck }) {
  const sheet = useOrderSheet(truck);
  if (sheet === null || sheet.fields.every(({ agrees }) => agrees)) return null;
  return (
    <p className="order-ahead" role="status">
      <span aria-hidden="true">! </span>
      {orderStandsSentence(sheet)}{" "}
      <button
        type="button"
        className="button"
        onClick={() => jumpTo("build", "[data-fold='order'] > summary")}
      >
        To the order
      </button>
    </p>
  );
}
