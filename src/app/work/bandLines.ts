import type { TriangleMesh } from "../../geometry/triangleMesh.ts";

/**
 * The lines on a surface along which a value given at its vertices is `level`, as separate segments: x, y, z of both
 * ends, one after another. Straight through each triangle; triangles with a value that is not finite are left out.
 */
export function bandLines(
  { positions, triangles }: TriangleMesh,
  values: Float32Array,
  level: number,
): Float32Array {
  const out: number[] = [];
  const push = (a: number, b: number) => {
    const share = (level - values[a]!) / (values[b]! - values[a]!);
    for (let axis = 0; axis < 3; axis++) {
      const from = positions[3 * a + axis]!;
      out.push(from + share * (positions[3 * b + axis]! - from));
    }
  };
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!] as const;
    const above = corners.map((corner) => values[corner]! >= level);
    if (!corners.every((corner) => Number.isFinite(values[corner]!))) continue;
    // The corner alone on its side; none when all are on one.
    const lone = above[0] === above[1] ? (above[1] === above[2] ? -1 : 2) : above[0] === above[2] ? 1 : 0;
    if (lone < 0) continue;
    push(corners[lone as 0 | 1 | 2], corners[((lone + 1) % 3) as 0 | 1 | 2]);
    push(corners[lone as 0 | 1 | 2], corners[((lone + 2) % 3) as 0 | 1 | 2]);
  }
  return Float32Array.from(out);
}
