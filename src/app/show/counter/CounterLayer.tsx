import { lazy, Suspense } from "react";
import { useLayer } from "../../state/address.ts";

const CounterView = lazy(async () => ({ default: (await import("./CounterView.tsx")).CounterView }));

/** The counter view while it is asked for; loaded only then. */
export function CounterLayer() {
  if (useLayer() !== "counter") return null;
  return (
    <Suspense>
      <CounterView />
    </Suspense>
  );
}
