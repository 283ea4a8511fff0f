import { ASSUMED_LAYOUT } from "../../../setup/worksheet/assumedLayout.ts";
import type { Truck } from "../../state/truck.ts";
import { startOwnTruck } from "./StartTruck.tsx";

export type StartButtonProps = {
  truck: Truck;
  /** It stays where some numbers are changed already: over fields, which would jump. Default false. */
  isChanged?: boolean;
};

/** The way from an example that nobody has changed to a truck of one's own. */
export function StartButton({ truck, isChanged = false }: StartButtonProps) {
  const { fromExample } = truck.setup;
  if (!fromExample || fromExample.of === ASSUMED_LAYOUT) return null;
  if (!fromExample.isAsItCame && !isChanged) return null;
  return (
    <button type="button" className="link-button" onClick={startOwnTruck}>
      Start your own truck
    </button>
  );
}
