import { type DualSurface, dualSurface } from "./dualSurface.ts";
import type { EnvelopeTree } from "./envelopeTree.ts";

/** Microseconds, about, of looking at a triangle. */
const TRIANGLE_WORK = 20;

/** Rounds of looking for triangles that are off and cutting the cubes about them. */
const MOST_ROUNDS = 5;

/** Least and most distance from what the ring sweeps that triangles may have where they are looked at, mm. */
export interface FitLimits {
  readonly low: number;
  readonly high: number;
}

/**
 * The surface of a tree, its cubes cut further wherever a triangle's middle or the middle of one of its edges
 * is off. Cuts the tree. Left-hand frame, mm. @returns null when the budget was spent first.
 */
export function fittedSurface(tree: EnvelopeTree, offset: number, limits: FitLimits): DualSurface | null {
  let surface = dualSurface(tree, offset);
  let since = 0;
  for (let round = 0; surface !== null && round < MOST_ROUNDS; round++) {
    const before = tree.count;
    const cut = tree.refine(leavesOff(tree, surface, limits, since));
    if (tree.budget.cut) return null;
    if (cut === 0) break;
    since = before;
    surface = dualSurface(tree, offset);
  }
  return surface;
}

/** Leaves of the triangles that are off, among those with a vertex in a leaf numbered `since` or later. */
function leavesOff(
  tree: EnvelopeTree,
  { positions, triangles, leaves }: DualSurface,
  limits: FitLimits,
  since: number,
): Set<number> {
  const off = new Set<number>();
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t]!;
    const b = triangles[t + 1]!;
    const c = triangles[t + 2]!;
    if (tree.budget.isSpent(TRIANGLE_WORK)) break;
    if (leaves[a]! < since && leaves[b]! < since && leaves[c]! < since) continue;
    if (
      isOff(tree, positions, leaves, a, b, c, limits) ||
      // The other triangle of an edge runs along it the other way: it is looked at once.
      (a < b && isOff(tree, positions, leaves, a, b, a, limits)) ||
      (b < c && isOff(tree, positions, leaves, b, c, b, limits)) ||
      (c < a && isOff(tree, positions, leaves, c, a, c, limits))
    ) {
      off.add(leaves[a]!).add(leaves[b]!).add(leaves[c]!);
    }
  }
  return off;
}

/** Looks at the middle of a triangle, or of the edge from a to b where c is a. */
function isOff(
  tree: EnvelopeTree,
  positions: Float64Array,
  leaves: Int32Array,
  a: number,
  b: number,
  c: number,
  { low, high }: FitLimits,
): boolean {
  const { swept, poses, poseFrom, poseTo } = tree;
  const of = c === a ? 2 : 3;
  const third = c === a ? 0 : 1;
  const x = (positions[3 * a]! + positions[3 * b]! + third * positions[3 * c]!) / of;
  const y = (positions[3 * a + 1]! + positions[3 * b + 1]! + third * positions[3 * c + 1]!) / of;
  const z = (positions[3 * a + 2]! + positions[3 * b + 2]! + third * positions[3 * c + 2]!) / of;
  // A leaf knows every pose that may be nearest within the ball about it; in none, all of them are asked.
  const known = [a, b, c].find((vertex) => tree.isInBall(leaves[vertex]!, x, y, z));
  let least = Number.POSITIVE_INFINITY;
  for (const vertex of known === undefined ? [a, b, c] : [known]) {
    const leaf = leaves[vertex]!;
    swept.look(x, y, z, poses, poseFrom[leaf]!, poseTo[leaf]!);
    if (swept.found[0]! < least) least = swept.found[0]!;
    if (least < low) return true;
  }
  return least > high && least < Number.POSITIVE_INFINITY;
}
