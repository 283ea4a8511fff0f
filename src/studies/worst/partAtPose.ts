import { CELL, CELL_ROW } from "../../gaps/cells.ts";
import { GAP_ROW } from "../../gaps/gapRow.ts";
import { meshGapTo, meshHint } from "../../gaps/mesh/meshGap.ts";
import { partGapTo } from "../../gaps/partGap.ts";
import type { PartShape } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";

/** The gap of a whole part at one pose after another, each search beginning where the last one ended. */
export class PartAtPose {
  /** The `GAP` row filled last. */
  readonly row = new Float64Array(GAP_ROW);
  /** mm. Largest radius about the part's cells. */
  readonly radius: number;
  private readonly hint = meshHint();

  constructor(
    readonly ring: RingShape,
    readonly part: PartShape,
  ) {
    let radius = 0;
    for (let i = 0; i < part.count; i++) radius = Math.max(radius, part.cells[i * CELL_ROW + CELL.radius]!);
    this.radius = radius;
  }

  /** @returns the gap, or `beat` when none is below it; mm. */
  gap(wheel: Float64Array, wheelAt: number, beat: number): number {
    const { row, ring, part, hint } = this;
    const { tree } = part;
    return tree === undefined
      ? partGapTo(row, 0, ring, wheel, wheelAt, part, beat)
      : meshGapTo(row, 0, ring, wheel, wheelAt, { tree }, beat, hint);
  }
}
