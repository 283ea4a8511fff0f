import { searchCellTo } from "./cells/cellSearch.ts";
import { CELL_ROW, CellKind } from "./cells/cells.ts";
import { meshGapTo } from "./mesh/meshGap.ts";
import type { PartShape } from "./partShape.ts";
import type { RingShape } from "./ring/ringShape.ts";
import { segmentGapTo } from "./segmentGap.ts";
import { unsettled } from "./skeleton/faces.ts";
import type { Skeleton } from "./skeleton/skeleton.ts";
import { skeletonGapTo } from "./skeleton/skeletonGap.ts";

export { GAP, GAP_ROW } from "./cells/cellSearch.ts";

/**
 * Signed distance between the ring at one pose and a part, negative = depth of interference: the least
 * over the part's points of their signed distance to the ring. Exact to `GAP_TOLERANCE` (depths also to
 * `DEPTH_SHARE`): by convexity where that settles it, else by bisecting the part where a proven bound cannot
 * rule a piece out. Left-hand frame, mm.
 *
 * @param wheel wheel center and outboard unit axis, six numbers at `wheelAt`.
 * @param beat only a gap below this matters: nothing is filled and `beat` returned when there is none.
 * @param coarse mm: where it is settled by bisection, the gap may be told by this much too large.
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
  coarse = 0,
): number {
  if (part.tree !== undefined)
    return meshGapTo(out, at, shape, wheel, wheelAt, { tree: part.tree }, beat, part.hint, coarse);
  let best = beat;
  if (part.skeleton !== null) {
    const settled = skeletonGapTo(out, at, shape, wheel, wheelAt, part.skeleton, beat);
    if (!Number.isNaN(settled)) {
      best = settled;
      for (let i = 0; i < unsettled.count; i++)
        best = cellGapTo(out, at, shape, wheel, wheelAt, part, unsettled.cells[i]!, best, coarse);
      return best;
    }
  }
  if (part.skeleton !== null && part.skeleton.faces.length > 0)
    best = edgesGapTo(out, at, shape, wheel, wheelAt, part.skeleton, best);
  for (let i = 0; i < part.count; i++)
    best = cellGapTo(out, at, shape, wheel, wheelAt, part, i, best, coarse);
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
  coarse: number,
): number {
  const { cells, balls } = part;
  const dx = balls[4 * cell]! - wheel[wheelAt]!;
  const dy = balls[4 * cell + 1]! - wheel[wheelAt + 1]!;
  const dz = balls[4 * cell + 2]! - wheel[wheelAt + 2]!;
  // Ball about the cell against the ball about the ring.
  const clearOf = beat + shape.ballRadius + balls[4 * cell + 3]!;
  if (clearOf > 0 && dx * dx + dy * dy + dz * dz > clearOf * clearOf) return beat;
  if (cells[cell * CELL_ROW] === CellKind.Solid) {
    if (!mayHoldCircle(cells, cell * CELL_ROW, shape)) return beat;
    if (beat > 0 && !ringInBox(cells, cell * CELL_ROW, shape, wheel, wheelAt)) return beat;
  }
  if (cells[cell * CELL_ROW] === CellKind.Segment) {
    const gap = segmentGapTo(out, at, shape, wheel, wheelAt, cells, cell * CELL_ROW, beat, coarse);
    if (!Number.isNaN(gap)) return gap;
  }
  return searchCellTo(out, at, shape, wheel, wheelAt, cells, cell * CELL_ROW, beat, coarse);
}

/**
 * Whether a solid box may have a place in the ring that is deeper than all of its faces, whatever the pose. A place of the
 * ring and all others of its circle about the wheel's axis are equally deep. Unless the box holds all of that circle, the
 * circle goes through a face of it, and the face is as deep. Along an axis of the box a circle of radius R whose plane has
 * the normal n reaches R√(1 − n²), and the three squares under those roots add up to 2.
 */
export function mayHoldCircle(cells: Float64Array, at: number, { leastRadius }: RingShape): boolean {
  let sum = 0;
  for (let i = 4; i <= 6; i++) sum += Math.min(1, (cells[at + i]! / leastRadius) ** 2);
  return !(sum < 2);
}

/** Whether a point of the ring lies inside a box: with all faces clear, the box then holds the whole ring. */
export function ringInBox(
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
