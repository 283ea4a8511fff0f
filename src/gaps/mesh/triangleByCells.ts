import { boundCell, cellBound } from "../cellBound.ts";
import { CELL_ROW, CellKind, cellCenterTo, splitCell, swapCells } from "../cells.ts";
import { GAP } from "../gapRow.ts";
import type { RingShape } from "../ring/ringShape.ts";
import { DEPTH_SHARE, GAP_TOLERANCE } from "../tolerances.ts";
import { TRIANGLE_ROW } from "./triangleTree.ts";

/** Splitting halves a cell's longest side; from 100 m down to rounding takes fewer than this per axis. */
const MOST_DEEP = 128;

// Leaf scratch.
const stack = new Float64Array(MOST_DEEP * CELL_ROW);
const found = cellBound();
const below = new Float64Array(3);
const above = new Float64Array(3);

/** mm. What a search may leave out, once a gap of `best` is known. */
export function slackAt(best: number): number {
  return GAP_TOLERANCE + (best < 0 ? -DEPTH_SHARE * best : 0);
}

/**
 * Gap of one triangle to the ring, if below `beat`, by bisection: for what convexity does not settle (a triangle
 * in the hole of the barrel, or in the ring). Fills `out` as `GAP` says. @returns the gap, or `beat`.
 */
export function triangleByCells(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  triangles: Float64Array,
  triangleAt: number,
  beat: number,
): number {
  let best = beat;
  stack[0] = CellKind.Triangle;
  for (let i = 0; i < TRIANGLE_ROW; i++) stack[1 + i] = triangles[triangleAt + i]!;
  stack[CELL_ROW - 1] = 0;
  let depth = 1;
  while (depth > 0) {
    const top = (depth - 1) * CELL_ROW;
    boundCell(found, shape, wheel, wheelAt, stack, top, null);
    if (found.value < best) {
      best = found.value;
      out[at] = best;
      for (let axis = 0; axis < 3; axis++) {
        out[at + GAP.point + axis] = found.center[axis]!;
        out[at + GAP.onRing + axis] = found.center[axis]! - found.distance * found.away[axis]!;
      }
    }
    if (found.bound >= best - slackAt(best) || depth === MOST_DEEP) {
      depth--;
      continue;
    }
    splitCell(stack, top, stack, top, top + CELL_ROW);
    // The half that lies nearer the ring is searched first: a good gap early rules out the rest.
    cellCenterTo(below, stack, top);
    cellCenterTo(above, stack, top + CELL_ROW);
    const slope =
      found.away[0]! * (below[0]! - above[0]!) +
      found.away[1]! * (below[1]! - above[1]!) +
      found.away[2]! * (below[2]! - above[2]!);
    if (slope < 0) swapCells(stack, top, top + CELL_ROW);
    depth++;
  }
  return best;
}
