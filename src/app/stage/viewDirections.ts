import type { Vec3 } from "../../geometry/vec.ts";
import type { ViewName } from "../state/workbenchState.ts";

/**
 * From the truck toward the eye. Up on the screen is Z; the top view leans back by a hair, so that forward is up.
 * The truck's left side is nearer in the side view, and faces left.
 */
export const VIEW_DIRECTIONS: Readonly<Record<ViewName, Vec3>> = {
  "three-quarter": [1.15, 0.85, 0.55],
  front: [1, 0, 0],
  side: [0, 1, 0],
  top: [-1e-4, 0, 1],
};
