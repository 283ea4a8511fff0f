import { lazy, Suspense } from "react";
import { Fold } from "../../parts/Fold.tsx";
import type { Truck } from "../../state/truck.ts";

// Tables and strip are loaded where loads are asked for.
const LoadsBody = lazy(async () => ({ default: (await import("./LoadsBody.tsx")).LoadsBody }));

/** Forces, shares of yield and weight, folded away until they are asked for. */
export function LoadsPanel({ truck }: { truck: Truck }) {
  return (
    <Fold id="loads" title="Loads" note="shares of yield, no verdict">
      <Suspense fallback={<p>Setting up the loads…</p>}>
        <LoadsBody truck={truck} />
      </Suspense>
    </Fold>
  );
}
