import type { TriangleMesh } from "../../geometry/triangleMesh.ts";

/** Puts triangles together; vertices are numbered as they come. */
export class MeshRows {
  private readonly positions: number[] = [];
  private readonly triangles: number[] = [];

  vertex(point: readonly number[]): number {
    this.positions.push(point[0]!, point[1]!, point[2]!);
    return this.positions.length / 3 - 1;
  }

  triangle(a: number, b: number, c: number): void {
    this.triangles.push(a, b, c);
  }

  /** Between two loops of as many vertices, both counterclockwise seen along the outside's left: a0 b0 b1 a1. */
  band(a: readonly number[], b: readonly number[]): void {
    a.forEach((from, i) => {
      const next = (i + 1) % a.length;
      this.triangle(from, a[next]!, b[next]!);
      this.triangle(from, b[next]!, b[i]!);
    });
  }

  /** From a loop to one vertex. */
  fan(loop: readonly number[], apex: number): void {
    loop.forEach((from, i) => {
      this.triangle(from, loop[(i + 1) % loop.length]!, apex);
    });
  }

  mesh(): TriangleMesh {
    return { positions: Float64Array.from(this.positions), triangles: Uint32Array.from(this.triangles) };
  }
}

/**
 * A body about an axis as a closed mesh: loops of `facets` vertices, one after another counterclockwise seen against the
 * axis, from one end of its section round to where it began. @param loop places of the vertices of each loop, in order along
 * the section: up the outside, so that the outside is on the right of the way; null = one vertex on the axis
 */
export function turnedMesh(
  count: number,
  facets: number,
  place: (loop: number, wrap: number) => readonly number[],
  isOnAxis: (loop: number) => boolean,
  isRing: boolean,
): TriangleMesh {
  const rows = new MeshRows();
  const loops = Array.from({ length: count }, (_, loop) =>
    isOnAxis(loop)
      ? [rows.vertex(place(loop, 0))]
      : Array.from({ length: facets }, (_, i) => rows.vertex(place(loop, (2 * Math.PI * i) / facets))),
  );
  const join = (a: readonly number[], b: readonly number[]) => {
    if (a.length === 1 && b.length === 1) return;
    if (b.length === 1) rows.fan(a, b[0]!);
    else if (a.length === 1) rows.fan([...b].reverse(), a[0]!);
    else rows.band(a, b);
  };
  for (let i = 1; i < count; i++) join(loops[i - 1]!, loops[i]!);
  if (isRing) join(loops[count - 1]!, loops[0]!);
  return rows.mesh();
}
