import type { RingShape } from "../ring/ringShape.ts";
import { boundCell, cellBound } from "./cellBound.ts";
import { CELL, CELL_ROW, CellKind, cellCenterTo, splitCell, swapCells } from "./cells.ts";
import { DEPTH_SHARE, GAP_TOLERANCE, SOLID_TOLERANCE } from "./tolerances.ts";

/** Where the gap kernels put things: gap, the point on the part, the point on the ring. */
export const GAP = { gap: 0, point: 1, onRing: 4 } as const;
export const GAP_ROW = 7;

/** Splitting halves a cell's longest side; from 100 m down to rounding takes fewer than this per axis. */
const MOST_DEEP = 192;

// Leaf scratch: the search calls nothing that could search again.
const stack = new Float64Array(MOST_DEEP * CELL_ROW);
const found = cellBound();
const below = new Float64Array(3);
const above = new Float64Array(3);

/** mm. What a search may leave out, once a gap of `best` is known. */
export function slackAt(best: number): number {
  return GAP_TOLERANCE + (best < 0 ? -DEPTH_SHARE * best : 0);
}

/**
 * Gap of one cell to the ring at one pose, if below `beat`, by bisecting it where a proven bound cannot rule a piece
 * out: for what convexity does not settle. Fills `out` as `GAP` says. Left-hand frame, mm. @param coarse mm, how much more
 * may be left out. @returns the gap, or `beat`. @throws RangeError for a pose or a cell that is not finite
 */
export function searchCellTo(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  cells: Float64Array,
  cellAt: number,
  beat: number,
  coarse = 0,
): number {
  let best = beat;
  for (let j = 0; j < CELL_ROW; j++) stack[j] = cells[cellAt + j]!;
  const radius = stack[CELL.radius]!;
  const coarser = coarse + (stack[CELL.kind] === CellKind.Solid ? SOLID_TOLERANCE - GAP_TOLERANCE : 0);
  // No place in the ring is deeper than its deepest: there a flat ridge of places as deep would be combed for nothing.
  const floor = -shape.deepest - radius;
  let depth = 1;
  while (depth > 0) {
    if (best <= floor + slackAt(best)) return best;
    const top = (depth - 1) * CELL_ROW;
    boundCell(found, shape, wheel, wheelAt, stack, top, null);
    if (found.value < best) {
      best = found.value;
      out[at] = best;
      for (let axis = 0; axis < 3; axis++) {
        out[at + GAP.point + axis] = found.center[axis]! - radius * found.away[axis]!;
        out[at + GAP.onRing + axis] = found.center[axis]! - found.distance * found.away[axis]!;
      }
    }
    if (found.bound >= best - slackAt(best) - coarser || depth === MOST_DEEP) {
      depth--;
      continue;
    }
    // Of what has no bound no half has one either, and there are 2^192 of them.
    if (Number.isNaN(found.bound)) throw new RangeError("searchCellTo: a pose or cell that is not finite");
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
