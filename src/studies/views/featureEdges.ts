import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { cross, dot, length, scale, sub, type Vec3, vecAt } from "../../geometry/vec.ts";

/** An edge between two points. */
export type Edge = readonly [from: Vec3, to: Vec3];

/** Faces that meet at more than this make an edge that is drawn; flat sides of a round meet at 5 degrees. */
const SHARP = Math.cos((25 * Math.PI) / 180);
/** A face seen at less than this share of its size is seen from its side; rounding must not turn it over. */
const EDGE_ON = 1e-9;

/** Edges of a closed mesh that a view shows: where faces meet sharply, and where one is seen and the other is not. */
export function featureEdges(mesh: TriangleMesh, toward: Vec3): Edge[] {
  const { positions, triangles } = mesh;
  const normals: (Vec3 | null)[] = [];
  const faces = new Map<number, number[]>();
  const count = positions.length / 3;
  for (let t = 0; t < triangles.length; t += 3) {
    const corners = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!] as const;
    const [a, b, c] = corners.map((vertex) => vecAt(positions, 3 * vertex)) as [Vec3, Vec3, Vec3];
    const normal = cross(sub(b, a), sub(c, a));
    const size = length(normal);
    normals.push(size > 0 ? scale(normal, 1 / size) : null);
    corners.forEach((from, i) => {
      const to = corners[(i + 1) % 3]!;
      const key = Math.min(from, to) * count + Math.max(from, to);
      const met = faces.get(key);
      if (met === undefined) faces.set(key, [t / 3]);
      else met.push(t / 3);
    });
  }
  const edges: Edge[] = [];
  for (const [key, met] of faces) {
    const [a, b] = met.map((face) => normals[face]);
    if (!a || !b || !isDrawn(a, b, toward)) continue;
    edges.push([vecAt(positions, 3 * Math.floor(key / count)), vecAt(positions, 3 * (key % count))]);
  }
  return edges;
}

function isDrawn(a: Vec3, b: Vec3, toward: Vec3): boolean {
  return dot(a, b) < SHARP || dot(a, toward) > EDGE_ON !== dot(b, toward) > EDGE_ON;
}
