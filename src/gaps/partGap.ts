import { boundCell, cellBound } from "./cellBound.ts";
import { CELL, CELL_ROW, CellKind, cellCenterTo, splitCell, swapCells } from "./cells.ts";
import type { PartShape } from "./partShape.ts";
import type { RingShape } from "./ring/ringShape.ts";
import { DEPTH_SHARE, GAP_TOLERANCE, SOLID_TOLERANCE } from "./tolerances.ts";

/** Where `partGapTo` puts things: gap, the point on the part, the point on the ring. */
export const GAP = { gap: 0, point: 1, onRing: 4 } as const;
export const GAP_ROW = 7;

/** Splitting halves a cell's longest side; from 100 m down to rounding takes fewer than this per axis. */
const MOST_DEEP = 192;

// Leaf scratch: the search calls nothing that could search again.
const stack = new Float64Array(MOST_DEEP * CELL_ROW);
const found = cellBound();
const below = new Float64Array(3);
const above = new Float64Array(3);

/**
 * Signed distance between the ring at one pose and a part, negative = depth of interference: the least
 * over the part's points of their signed distance to the ring. Exact to `GAP_TOLERANCE` (depths also to
 * `DEPTH_SHARE`), by bisecting the part where a proven bound cannot rule a piece out. Left-hand frame, mm.
 *
 * @param wheel wheel center and outboard unit axis, six numbers at `wheelAt`.
 * @param beat only a gap below this matters: nothing is filled and `beat` returned when there is none.
 * @returns the gap.
 */
export function partGapTo(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  part: PartShape,
  beat = Number.POSITIVE_INFINITY,
): number {
  let best = beat;
  const { cells, balls, count } = part;
  const cx = wheel[wheelAt]!;
  const cy = wheel[wheelAt + 1]!;
  const cz = wheel[wheelAt + 2]!;
  for (let i = 0; i < count; i++) {
    const dx = balls[4 * i]! - cx;
    const dy = balls[4 * i + 1]! - cy;
    const dz = balls[4 * i + 2]! - cz;
    // Ball about the cell against the ball about the ring.
    const clearOf = best + shape.ballRadius + balls[4 * i + 3]!;
    if (
      cells[i * CELL_ROW] === CellKind.Solid &&
      best > 0 &&
      !ringInBox(cells, i * CELL_ROW, shape, wheel, wheelAt)
    )
      continue;
    if (clearOf > 0 && dx * dx + dy * dy + dz * dz > clearOf * clearOf) continue;
    for (let j = 0; j < CELL_ROW; j++) stack[j] = cells[i * CELL_ROW + j]!;
    let depth = 1;
    while (depth > 0) {
      const top = (depth - 1) * CELL_ROW;
      boundCell(found, shape, wheel, wheelAt, stack, top, null);
      if (found.value < best) {
        best = found.value;
        const radius = stack[top + CELL.radius]!;
        out[at] = best;
        for (let axis = 0; axis < 3; axis++) {
          out[at + GAP.point + axis] = found.center[axis]! - radius * found.away[axis]!;
          out[at + GAP.onRing + axis] = found.center[axis]! - found.distance * found.away[axis]!;
        }
      }
      const least = stack[top] === CellKind.Solid ? SOLID_TOLERANCE : GAP_TOLERANCE;
      const tolerance = least + (best < 0 ? -DEPTH_SHARE * best : 0);
      if (found.bound >= best - tolerance || depth === MOST_DEEP) depth--;
      else {
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
    }
  }
  return best;
}

/** Whether a point of the ring lies inside a box: with all faces clear, the box then holds the whole ring. */
function ringInBox(
  cells: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
): boolean {
  const [x, r] = shape.outline[0]!;
  const level = Math.sqrt(wheel[wheelAt + 3]! ** 2 + wheel[wheelAt + 4]! ** 2);
  const up = [
    (-wheel[wheelAt + 5]! * wheel[wheelAt + 3]!) / level,
    (-wheel[wheelAt + 5]! * wheel[wheelAt + 4]!) / level,
    level,
  ];
  for (let i = 0; i < 3; i++) {
    const p = wheel[wheelAt + i]! + x * wheel[wheelAt + 3 + i]! + r * up[i]!;
    if (Math.abs(p - cells[at + 1 + i]!) > cells[at + 4 + i]!) return false;
  }
  return true;
}
