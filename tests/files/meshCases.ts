import type { TriangleMesh } from "../../src/geometry/triangleMesh.ts";

/** A closed bent tube of 4-sided rings about a circle in space, off the origin: 64-bit coordinates that 32 bits round. */
export function crookedRing(rings = 17): TriangleMesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let k = 0; k < rings; k++) {
    const turn = (2 * Math.PI * k) / rings;
    for (let i = 0; i < 4; i++) {
      const around = (Math.PI * i) / 2;
      const r = 300 + 40 * Math.cos(around);
      positions.push(
        700.1 + r * Math.cos(turn),
        900.7 + r * Math.sin(turn),
        350.3 + 40 * Math.sin(around) + 20 * Math.sin(2 * turn),
      );
      const next = (i + 1) % 4;
      const [a, b] = [4 * k + i, 4 * k + next];
      const [c, d] = [4 * ((k + 1) % rings) + i, 4 * ((k + 1) % rings) + next];
      triangles.push(a, c, b, b, c, d);
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Volume by triangles' corners, nine numbers a triangle. */
export function cornersVolume(corners: ArrayLike<number>): number {
  let six = 0;
  for (let t = 0; t < corners.length; t += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = Array.from({ length: 9 }, (_, i) => corners[t + i]!) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/** The corners of every triangle, nine numbers each. */
export function cornersOf({ positions, triangles }: TriangleMesh): number[] {
  return [...triangles].flatMap((v) => [...positions.subarray(3 * v, 3 * v + 3)]);
}
