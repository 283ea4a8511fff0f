import { useMemo } from "react";
import { type OrderSheet, orderSheet } from "../../../studies/order/orderSheet.ts";
import { useCatalogs } from "../../parts/catalogs/useCatalogs.ts";
import type { Truck } from "../../state/truck.ts";

/** The order of a truck worked out with the catalogs there are; null = it has none. As bolted on: alignment changes no order. */
export function useOrderSheet(truck: Truck): OrderSheet | null {
  const catalogs = useCatalogs();
  const { setup } = truck.bolted;
  const { file } = truck;
  return useMemo(() => orderSheet(setup, catalogs, file), [setup, catalogs, file]);
}
