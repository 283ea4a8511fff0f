import { lazy, Suspense } from "react";
import { Fold } from "../../parts/Fold.tsx";
import type { Truck } from "../../state/truck.ts";

// Form, catalogs and sheet are loaded where an order is asked for.
const OrderBody = lazy(async () => ({ default: (await import("./OrderBody.tsx")).OrderBody }));

/** The order sheet, folded away until it is asked for. */
export function OrderPanel({ truck }: { truck: Truck }) {
  const { order } = truck.bolted.setup;
  return (
    <Fold id="order" title="Order" note={order === null ? "none yet" : (order.number ?? "begun")}>
      <Suspense fallback={<p>Setting up the order…</p>}>
        <OrderBody truck={truck} />
      </Suspense>
    </Fold>
  );
}
