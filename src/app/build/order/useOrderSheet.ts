import { useMemo } from "react";
import { useStore } from "zustand";
import type { Catalogs } from "../../../setup/catalogs/readCatalog.ts";
import { type OrderSheet, orderSheet } from "../../../studies/order/orderSheet.ts";
import { givenCatalogs } from "../../state/givenCatalogs.ts";
import type { Truck } from "../../state/truck.ts";
import { SHIPPED } from "./shippedCatalogs.ts";

/** The program's own catalogs, each replaced by the one given of its kind. */
export function useCatalogs(): Catalogs {
  const given = useStore(givenCatalogs, (s) => s.given);
  return useMemo(
    () => Object.assign({}, SHIPPED, ...Object.values(given).map(({ catalogs }) => catalogs)) as Catalogs,
    [given],
  );
}

/** The order of a truck worked out with the catalogs there are; null = it has none. As bolted on: alignment changes no order. */
export function useOrderSheet(truck: Truck): OrderSheet | null {
  const catalogs = useCatalogs();
  const { setup } = truck.bolted;
  const { file } = truck;
  return useMemo(() => orderSheet(setup, catalogs, file), [setup, catalogs, file]);
}
