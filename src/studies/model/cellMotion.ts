import type { InnerEndSpread } from "../../suspension/motionBound.ts";

/** How one side moves over a cell of lower arm angle × steer about its middle pose: proven, left-hand frame, mm, rad. */
export interface CellMotion {
  /** Filled by `motionBoundTo` at the middle. */
  readonly motion: Float64Array;
  /** Velocity of the inner tie rod end, mm per unit of steer; bounds of it over the cell. */
  readonly inner: readonly [number, number, number];
  readonly innerSpread: InnerEndSpread;
  /** Half ranges: radians of lower arm, units of steer. */
  readonly armHalf: number;
  readonly steerHalf: number;
  /** Of the middle's lower arm angle. */
  readonly cosArm: number;
  readonly sinArm: number;
  /** Travel, mm, at the ends of the arm's range; NaN out of reach. */
  readonly travelLow: number;
  readonly travelHigh: number;
  /**
   * The cell holds the border of reach: `motion` then tells no speeds, but the turn from the middle's frame to that of
   * any pose of the cell, as the arm's, and the middle is a pose amid those of the cell.
   */
  readonly displaced: boolean;
}
