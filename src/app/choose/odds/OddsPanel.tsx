import { Fold } from "../../parts/Fold.tsx";
import type { Truck } from "../../state/truck.ts";
import { OddsBody } from "./OddsBody.tsx";

/** How likely the truck clears, by how well its numbers are known; worked out while it is open. */
export function OddsPanel({ truck }: { truck: Truck }) {
  return (
    <Fold id="odds" title="Odds" note="how likely it clears, measured like this">
      <OddsBody truck={truck} />
    </Fold>
  );
}
