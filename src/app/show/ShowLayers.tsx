import { lazy, Suspense } from "react";
import { useLayer } from "../state/address.ts";

const CounterView = lazy(async () => ({ default: (await import("./counter/CounterView.tsx")).CounterView }));
const CustomerSheet = lazy(async () => ({
  default: (await import("./sheet/CustomerSheet.tsx")).CustomerSheet,
}));

/** The counter view or the customer's sheet while it is asked for; loaded only then. */
export function ShowLayers() {
  const layer = useLayer();
  if (layer !== "counter" && layer !== "sheet") return null;
  return <Suspense>{layer === "counter" ? <CounterView /> : <CustomerSheet />}</Suspense>;
}
