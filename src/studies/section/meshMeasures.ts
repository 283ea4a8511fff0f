import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import type { Vec3 } from "../../geometry/vec.ts";

/** Volume in a closed mesh, mm³, + where its triangles are counterclockwise seen from outside (divergence theorem). */
export function meshVolume({ positions, triangles }: TriangleMesh): number {
  let sixfold = 0;
  // Measured from the first vertex: far from the origin the sum would lose digits.
  const [ox, oy, oz] = [positions[0] ?? 0, positions[1] ?? 0, positions[2] ?? 0];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [3 * triangles[t]!, 3 * triangles[t + 1]!, 3 * triangles[t + 2]!];
    const [ax, ay, az] = [positions[a]! - ox, positions[a + 1]! - oy, positions[a + 2]! - oz];
    const [bx, by, bz] = [positions[b]! - ox, positions[b + 1]! - oy, positions[b + 2]! - oz];
    const [cx, cy, cz] = [positions[c]! - ox, positions[c + 1]! - oy, positions[c + 2]! - oz];
    sixfold += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sixfold / 6;
}

/** Lowest and highest coordinates of meshes together, mm. @throws RangeError when there is no vertex */
export function meshBounds(meshes: readonly TriangleMesh[]): { readonly min: Vec3; readonly max: Vec3 } {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const { positions } of meshes) {
    for (let i = 0; i < positions.length; i++) {
      const axis = i % 3;
      if (positions[i]! < min[axis]!) min[axis] = positions[i]!;
      if (positions[i]! > max[axis]!) max[axis] = positions[i]!;
    }
  }
  if (!(min[0] <= max[0])) throw new RangeError("meshBounds: no vertex to bound");
  return { min, max };
}
