import { CELL, CELL_ROW } from "../../gaps/cells/cells.ts";
import { GAP_ROW } from "../../gaps/cells/gapRow.ts";
import { DEPTH_SHARE, GAP_TOLERANCE, SOLID_TOLERANCE } from "../../gaps/cells/tolerances.ts";
import { partGapTo } from "../../gaps/partGap.ts";
import type { PartShape } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";

/** The gap of a whole part at one pose after another. */
export class PartAtPose {
  /** The `GAP` row filled last. */
  readonly row = new Float64Array(GAP_ROW);
  /** mm. Largest radius about the part's cells. */
  readonly radius: number;

  constructor(
    readonly ring: RingShape,
    readonly part: PartShape,
  ) {
    let radius = 0;
    for (let i = 0; i < part.count; i++) radius = Math.max(radius, part.cells[i * CELL_ROW + CELL.radius]!);
    this.radius = radius;
  }

  /** mm. The true gap at a pose is no further below the one found. @param coarse as it was asked for */
  slack(gap: number, coarse: number): number {
    return coarse + (gap < 0 ? SOLID_TOLERANCE - DEPTH_SHARE * gap : GAP_TOLERANCE);
  }

  /** @param coarse mm, how much too large it may be. @returns the gap, or `beat` when none is below it; mm. */
  gap(wheel: Float64Array, wheelAt: number, beat: number, coarse: number): number {
    return partGapTo(this.row, 0, this.ring, wheel, wheelAt, this.part, beat, coarse);
  }
}
