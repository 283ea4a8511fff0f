import type { ReactNode } from "react";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** Where a way ends, in words; pressed, the truck goes there. */
export function GoTo({ travel, steer, children }: { travel: number; steer: number; children: ReactNode }) {
  const setPose = useWorkbench((s) => s.setPose);
  return (
    <button type="button" className="map-go" onClick={() => setPose(travel, steer)}>
      {children}
    </button>
  );
}
