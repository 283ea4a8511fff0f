import type { CellMotion } from "../model/carried.ts";

/** One side of one pose as a limit sees it. Left-hand frame (the right side mirrored), mm. Refilled from pose to pose. */
export interface LimitPlace {
  /** Constants of the side (`SIDE`). */
  readonly side: Float64Array;
  /** Row filled by `poseRowTo` with that side, and where it starts. */
  pose: Float64Array;
  poseAt: number;
  /** The other side's inner tie rod end, in this side's frame. */
  readonly otherInner: Float64Array;
  /** mm, + = bump. */
  travel: number;
  /** −1 … +1, + = left turn of the truck. */
  steer: number;
}

/**
 * mm or radians. A margin this little below 0 is rounding: a bump stop typed at the very end of travel is kept there.
 */
export const KEPT = 1e-6;

/**
 * Something that stops the front end: a continuous function of the pose, ≥ 0 while it is kept. Both functions allocate
 * nothing.
 */
export interface FrontEndLimit {
  readonly name: string;
  /** What its margin is: mm or radians. */
  readonly measure: "length" | "angle";
  /** The margin at its best place: margin ÷ range is the share in hand, by which unlike limits are ranked. */
  readonly range: number;
  readonly margin: (place: LimitPlace) => number;
  /** The margin hangs on the travel alone: it is the same at every steer. */
  readonly isOfTravel?: true;
  /**
   * Bounds how much the margin can fall within a cell of poses about `place`: `out[0]` by the arm's range, `out[1]` by
   * the steering's; Infinity where nothing is proven. The margin in the cell is at least margin − out[0] − out[1].
   */
  readonly spreadTo: (out: Float64Array, place: LimitPlace, cell: CellMotion) => void;
  /** The same for how much it can rise; left out where `spreadTo` bounds that too. */
  readonly riseTo?: (out: Float64Array, place: LimitPlace, cell: CellMotion) => void;
}
