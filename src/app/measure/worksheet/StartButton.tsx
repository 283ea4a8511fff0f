import { ASSUMED_LAYOUT } from "../../../setup/worksheet/assumedLayout.ts";
import type { Truck } from "../../state/truck.ts";
import { startOwnTruck } from "./StartTruck.tsx";

/** The way from an example that nobody has changed to a truck of one's own. */
export function StartButton({ truck }: { truck: Truck }) {
  const { fromExample } = truck.setup;
  if (fromExample?.isAsItCame !== true || fromExample.of === ASSUMED_LAYOUT) return null;
  return (
    <button type="button" className="link-button" onClick={startOwnTruck}>
      Start your own truck
    </button>
  );
}
