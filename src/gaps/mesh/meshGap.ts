import { boundCell, cellBound } from "../cells/cellBound.ts";
import { GAP, searchCellTo, slackAt } from "../cells/cellSearch.ts";
import { CELL_ROW, CellKind } from "../cells/cells.ts";
import type { HullProfile } from "../ring/hullProfile.ts";
import type { RingShape } from "../ring/ringShape.ts";
import { SEEN, SEEN_ROW, seeHullProfile } from "./seeHullProfile.ts";
import { triangleOnHullProfile } from "./triangleOnHullProfile.ts";
import { BOX_ROW, DEEPEST_NODE, TRIANGLE_ROW, type TriangleTree } from "./triangleTree.ts";

// Leaf scratch: nodes waiting with their bounds, the place a triangle was found nearest at.
const waiting = new Int32Array(DEEPEST_NODE + 2);
const bounds = new Float64Array(DEEPEST_NODE + 2);
const place = new Float64Array(SEEN_ROW);
const cell = new Float64Array(CELL_ROW);
const found = cellBound();

/** Remembers the triangle found last (−1: none): poses that follow one another are searched several times faster. */
export type MeshHint = Int32Array;

export function meshHint(): MeshHint {
  return Int32Array.of(-1);
}

/**
 * Signed distance between the ring at one pose and a mesh, as `partGapTo` gives it (same rows, same tolerance, same
 * `beat`), by a walk down the tree of its triangles, the nearer child first. A node is passed over when its bound
 * shows nothing below the best gap so far; proofs in `public/docs/certified-gaps.md`. Allocates nothing.
 *
 * @param hint a triangle to begin with; the triangle found is left in it. Any hint gives the same gap.
 * @param coarse mm: a triangle in the ring or in the barrel's hole may be told by this much too large.
 * @returns the gap, or `beat` when none is below it (nothing is filled then).
 */
export function meshGapTo(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  { tree }: { readonly tree: TriangleTree },
  beat = Number.POSITIVE_INFINITY,
  hint: MeshHint | null = null,
  coarse = 0,
): number {
  const { corners, boxes, links } = tree;
  let best = beat;
  if (hint !== null && hint[0]! >= 0 && hint[0]! < tree.count)
    best = triangleGap(out, at, shape, wheel, wheelAt, corners, hint[0]! * TRIANGLE_ROW, best, coarse);
  let least = best - slackAt(best) - coarse;
  waiting[0] = 0;
  bounds[0] = nodeBound(shape, wheel, wheelAt, boxes, 0, least);
  let depth = 1;
  while (depth > 0) {
    depth--;
    // No point is deeper in the ring than its deepest place.
    if (!(bounds[depth]! < least) || !(-shape.deepest < least)) continue;
    const node = waiting[depth]!;
    const first = links[2 * node]!;
    const size = links[2 * node + 1]!;
    if (size > 0) {
      for (let i = first; i < first + size; i++) {
        const gap = triangleGap(out, at, shape, wheel, wheelAt, corners, i * TRIANGLE_ROW, best, coarse);
        if (!(gap < best)) continue;
        best = gap;
        least = best - slackAt(best) - coarse;
        if (hint !== null) hint[0] = i;
      }
      continue;
    }
    const near = nodeBound(shape, wheel, wheelAt, boxes, (node + 1) * BOX_ROW, least);
    const far = nodeBound(shape, wheel, wheelAt, boxes, first * BOX_ROW, least);
    const swap = far < near ? 1 : 0;
    // The last one in is looked at first.
    waiting[depth + swap] = first;
    bounds[depth + swap] = far;
    waiting[depth + 1 - swap] = node + 1;
    bounds[depth + 1 - swap] = near;
    depth += 2;
  }
  return best;
}

/** The gap of one triangle, if below `beat`. */
function triangleGap(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  corners: Float64Array,
  triangleAt: number,
  beat: number,
  coarse: number,
): number {
  const { hullProfile } = shape;
  const d = triangleOnHullProfile(
    place,
    hullProfile,
    wheel,
    wheelAt,
    corners,
    triangleAt,
    beat,
    hullProfile.count >> 1,
  );
  if (!(d < beat)) return beat;
  // Nearest to a place of the hull profile that is none of the ring's, or inside: convexity does not settle it.
  if (!(d > 0) || !isReal(hullProfile, place[SEEN.edge]!))
    return triangleByCells(out, at, shape, wheel, wheelAt, corners, triangleAt, beat, coarse);
  out[at] = d;
  for (let axis = 0; axis < 3; axis++) {
    out[at + GAP.point + axis] = place[axis]!;
    out[at + GAP.onRing + axis] = place[axis]! - d * place[SEEN.slope + axis]!;
  }
  return d;
}

/**
 * No point of a node's box has less than this. The distance to the hull profile is convex and no more than that to the
 * ring, so its tangent at the center bounds both. Where that is not enough and the nearest place of the hull profile may be
 * none of the ring's, the general bound of a box is asked too.
 */
function nodeBound(
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  boxes: Float64Array,
  box: number,
  least: number,
): number {
  const { hullProfile } = shape;
  seeHullProfile(place, 0, hullProfile, wheel, wheelAt, boxes, box, hullProfile.count >> 1);
  const d = place[SEEN.distance]!;
  const bound =
    d -
    Math.abs(place[SEEN.slope]!) * boxes[box + 3]! -
    Math.abs(place[SEEN.slope + 1]!) * boxes[box + 4]! -
    Math.abs(place[SEEN.slope + 2]!) * boxes[box + 5]!;
  if (!(bound < least) || (d > 0 && isReal(hullProfile, place[SEEN.edge]!))) return bound;
  cell[0] = CellKind.Box;
  for (let i = 0; i < BOX_ROW; i++) cell[1 + i] = boxes[box + i]!;
  boundCell(found, shape, wheel, wheelAt, cell, 0, null);
  return found.bound > bound ? found.bound : bound;
}

function isReal(hullProfile: HullProfile, edge: number): boolean {
  return edge < 0 || hullProfile.real[edge] === 1;
}

// Leaf scratch.
const leaf = new Float64Array(CELL_ROW);
leaf[0] = CellKind.Triangle;

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
  coarse = 0,
): number {
  for (let i = 0; i < TRIANGLE_ROW; i++) leaf[1 + i] = triangles[triangleAt + i]!;
  return searchCellTo(out, at, shape, wheel, wheelAt, leaf, 0, beat, coarse);
}
