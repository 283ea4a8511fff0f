import type { TriangleMesh } from "../../geometry/triangleMesh.ts";

/** mm. How far a vertex is moved that stands where another does: over a hundred times what 32 bits resolve at 2 m. */
const MOVE = 0.02;
/** Rounds; one does unless a moved vertex lands on another. */
const MOST_ROUNDS = 8;

/**
 * Moves vertices that share a place in single precision apart, each a little toward the middle of its own triangles,
 * so that whoever joins equal places (a reader of STL, which has no vertex numbers) finds the same surface.
 * Changes `positions`, which are then whole in 32 bits.
 */
export function partPlaces({ positions, triangles }: TriangleMesh): void {
  for (let i = 0; i < positions.length; i++) positions[i] = Math.fround(positions[i]!);
  for (let round = 1; round <= MOST_ROUNDS; round++) {
    const shared = sharedPlaces(positions);
    if (shared.length === 0) return;
    const middles = middlesOf(positions, triangles, shared);
    shared.forEach((vertex, i) => {
      const [x, y, z] = [0, 1, 2].map((axis) => middles[3 * i + axis]! - positions[3 * vertex + axis]!);
      const away = Math.hypot(x!, y!, z!) || 1;
      for (let axis = 0; axis < 3; axis++) {
        const step = (round * MOVE * [x!, y!, z!][axis]!) / away;
        positions[3 * vertex + axis] = Math.fround(positions[3 * vertex + axis]! + step);
      }
    });
  }
}

/** Vertices that stand where one of a lower number does. */
function sharedPlaces(positions: Float64Array): number[] {
  const order = Uint32Array.from({ length: positions.length / 3 }, (_, vertex) => vertex);
  const compare = (a: number, b: number) =>
    positions[3 * a]! - positions[3 * b]! ||
    positions[3 * a + 1]! - positions[3 * b + 1]! ||
    positions[3 * a + 2]! - positions[3 * b + 2]!;
  order.sort((a, b) => compare(a, b) || a - b);
  const shared: number[] = [];
  order.forEach((vertex, i) => {
    if (i > 0 && compare(vertex, order[i - 1]!) === 0) shared.push(vertex);
  });
  return shared;
}

/** For each of some vertices the middle of the middles of its triangles: x, y, z. */
function middlesOf(
  positions: Float64Array,
  triangles: Uint32Array,
  vertices: readonly number[],
): Float64Array {
  const rowOf = new Map(vertices.map((vertex, i) => [vertex, i]));
  const sums = new Float64Array(3 * vertices.length);
  const counts = new Float64Array(vertices.length);
  for (let corner = 0; corner < triangles.length; corner++) {
    const row = rowOf.get(triangles[corner]!);
    if (row === undefined) continue;
    const first = corner - (corner % 3);
    for (let k = 0; k < 3; k++) {
      for (let axis = 0; axis < 3; axis++) {
        sums[3 * row + axis] = sums[3 * row + axis]! + positions[3 * triangles[first + k]! + axis]! / 3;
      }
    }
    counts[row] = counts[row]! + 1;
  }
  return sums.map((sum, i) => sum / counts[Math.floor(i / 3)]!);
}
