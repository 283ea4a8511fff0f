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

/** The surface as a reader of STL makes it: vertices that share a place in single precision are one. */
export function welded({ positions, triangles }: TriangleMesh): TriangleMesh {
  const numbers = new Map<string, number>();
  const places: number[] = [];
  const numberOf = Uint32Array.from({ length: positions.length / 3 }, (_, vertex) => {
    const place = [0, 1, 2].map((axis) => Math.fround(positions[3 * vertex + axis]!));
    const key = place.join(" ");
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, numbers.size);
    places.push(...place);
    return numbers.size - 1;
  });
  return { positions: Float64Array.from(places), triangles: triangles.map((vertex) => numberOf[vertex]!) };
}
