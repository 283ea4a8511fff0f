import type { Vec3 } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { ViewName } from "../state/workbenchState.ts";

/**
 * From the truck toward the eye. Up on the screen is Z; the top view leans back by a hair, so that forward is up.
 * The truck's left side is nearer in the side view, and faces left. In the wheel well the eye is inboard of the tire,
 * ahead of the axle and below its middle: it looks out and up into the arch.
 */
const DIRECTIONS: Readonly<Record<ViewName, Vec3>> = {
  "three-quarter": [1.15, 0.85, 0.55],
  front: [1, 0, 0],
  side: [0, 1, 0],
  top: [-1e-4, 0, 1],
  well: [0.55, -1, -0.22],
};

/** Toward the eye of a view. @param side whose wheel is looked at, where it makes a difference */
export function viewDirection(view: ViewName, side: Side): Vec3 {
  const [x, y, z] = DIRECTIONS[view];
  return (view === "well" || view === "side") && side === "right" ? [x, -y, z] : [x, y, z];
}
