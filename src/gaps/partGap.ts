import { boundCell, cellBound } from "./cellBound.ts";
import { CELL, CELL_ROW, CellKind, cellCenterTo, splitCell, swapCells } from "./cells.ts";
import { GAP } from "./gapRow.ts";
import { meshGapTo } from "./mesh/meshGap.ts";
import type { PartShape } from "./partShape.ts";
import type { RingShape } from "./ring/ringShape.ts";
import { segmentGapTo } from "./segmentGap.ts";
import { unsettled } from "./skeleton/faces.ts";
import type { Skeleton } from "./skeleton/skeleton.ts";
import { skeletonGapTo } from "./skeleton/skeletonGap.ts";
import { DEPTH_SHARE, GAP_TOLERANCE, SOLID_TOLERANCE } from "./tolerances.ts";

export { GAP, GAP_ROW } from "./gapRow.ts";

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
 * `DEPTH_SHARE`): by convexity where that settles it, else by bisecting the part where a proven bound cannot
 * rule a piece out. Left-hand frame, mm.
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
  if (part.tree !== undefined)
    return meshGapTo(out, at, shape, wheel, wheelAt, { tree: part.tree }, beat, part.hint);
  let best = beat;
  if (part.skeleton !== null) {
    const settled = skeletonGapTo(out, at, shape, wheel, wheelAt, part.skeleton, beat);
    if (!Number.isNaN(settled)) {
      best = settled;
      for (let i = 0; i < unsettled.count; i++)
        best = cellGapTo(out, at, shape, wheel, wheelAt, part, unsettled.cells[i]!, best);
      return best;
    }
  }
  if (part.skeleton !== null && part.skeleton.faces.length > 0)
    best = edgesGapTo(out, at, shape, wheel, wheelAt, part.skeleton, best);
  for (let i = 0; i < part.count; i++) best = cellGapTo(out, at, shape, wheel, wheelAt, part, i, best);
  return best;
}

const edge = new Float64Array(CELL_ROW);

/** The least gap of a skeleton's edges, if below `beat`: in the barrel's hole that is where a solid comes nearest. */
function edgesGapTo(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  { corners, edges }: Skeleton,
  beat: number,
): number {
  let best = beat;
  for (let i = 0; i < edges.length; i += 2) {
    for (let axis = 0; axis < 3; axis++) {
      edge[1 + axis] = corners[3 * edges[i]! + axis]!;
      edge[4 + axis] = corners[3 * edges[i + 1]! + axis]!;
    }
    const gap = segmentGapTo(out, at, shape, wheel, wheelAt, edge, 0, best);
    if (gap < best) best = gap;
  }
  return best;
}

/** The gap of one cell of the part, if below `best`, by bisection. */
function cellGapTo(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  part: PartShape,
  cell: number,
  beat: number,
): number {
  const { cells, balls } = part;
  let best = beat;
  const dx = balls[4 * cell]! - wheel[wheelAt]!;
  const dy = balls[4 * cell + 1]! - wheel[wheelAt + 1]!;
  const dz = balls[4 * cell + 2]! - wheel[wheelAt + 2]!;
  // Ball about the cell against the ball about the ring.
  const clearOf = best + shape.ballRadius + balls[4 * cell + 3]!;
  if (clearOf > 0 && dx * dx + dy * dy + dz * dz > clearOf * clearOf) return best;
  if (
    cells[cell * CELL_ROW] === CellKind.Solid &&
    best > 0 &&
    !ringInBox(cells, cell * CELL_ROW, shape, wheel, wheelAt)
  )
    return best;
  if (cells[cell * CELL_ROW] === CellKind.Segment) {
    const gap = segmentGapTo(out, at, shape, wheel, wheelAt, cells, cell * CELL_ROW, best);
    if (!Number.isNaN(gap)) return gap;
  }
  for (let j = 0; j < CELL_ROW; j++) stack[j] = cells[cell * CELL_ROW + j]!;
  // No place in the ring is deeper than its deepest: there a flat ridge of places as deep would be combed for nothing.
  const floor = -shape.deepest - cells[cell * CELL_ROW + CELL.radius]!;
  let depth = 1;
  while (depth > 0) {
    if (best <= floor + GAP_TOLERANCE - DEPTH_SHARE * best) return best;
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
