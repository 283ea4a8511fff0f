import type { SectionPlane } from "../../studies/section/outline.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { memoLast } from "../state/memoLast.ts";
import type { Truck } from "../state/truck.ts";
import type { ViewName } from "../state/workbenchState.ts";
import { extentOf } from "./extents.ts";

type Axis = SectionPlane["axis"];

export interface SectionAxis {
  readonly axis: Axis;
  readonly label: string;
  /** Which way its positions count. */
  readonly short: string;
  /** The view that looks at it squarely. */
  readonly view: ViewName;
}

/** The planes that can be cut, as a person picks them. */
export const SECTION_AXES: readonly SectionAxis[] = [
  { axis: "x", label: "across the truck (x)", short: "ahead of the axle line", view: "front" },
  { axis: "y", label: "along the truck (y)", short: "left of the middle", view: "side" },
  { axis: "z", label: "level (z)", short: "up from the floor it was measured on", view: "top" },
];

// A scan has hundreds of thousands of points, and a slide is drawn again with each event of its drag.
const extent = memoLast(extentOf);

/** Where a section may stand along an axis, mm, and where it starts: through the middle of one wheel. */
export function sectionRange(
  truck: Truck,
  axis: Axis,
  side: Side,
): { low: number; high: number; start: number } {
  const at = axis === "x" ? 0 : axis === "y" ? 1 : 2;
  const { min, max } = extent(truck);
  const pose = solvePose(truck.model.frontEnd, 0, 0);
  const [low, high] = [min[at]!, max[at]!];
  return { low, high, start: pose.ok ? pose[side].wheelCenter[at]! : 0.5 * (low + high) };
}
