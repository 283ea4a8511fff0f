import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";

/** Counts the directed edges that are not used once this way and once the other way. 0: a closed 2-manifold. */
export function openEdges({ positions, triangles }: TriangleMesh): number {
  const vertices = positions.length / 3;
  const uses = new Map<number, number>();
  const key = (a: number, b: number) => a * vertices + b;
  for (let i = 0; i < triangles.length; i++) {
    const next = i % 3 === 2 ? i - 2 : i + 1;
    const edge = key(triangles[i]!, triangles[next]!);
    uses.set(edge, (uses.get(edge) ?? 0) + 1);
  }
  let open = 0;
  for (const [edge, count] of uses) {
    const a = Math.floor(edge / vertices);
    if (count !== 1 || uses.get(key(edge % vertices, a)) !== 1) open++;
  }
  return open;
}
