import type { Manifold } from "manifold-3d";
import type { TriangleMesh } from "../../../src/geometry/triangleMesh.ts";

/** A closed mesh revolved about z: `sides` flat sides, corners on the round surface. @param section [r, z], counterclockwise */
function revolved(section: readonly (readonly [number, number])[], sides: number): TriangleMesh {
  const count = section.length;
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let k = 0; k < sides; k++) {
    const angle = (2 * Math.PI * k) / sides;
    section.forEach(([r, z], i) => {
      positions.push(r * Math.cos(angle), r * Math.sin(angle), z);
      const next = (i + 1) % count;
      const [a, b] = [k * count + i, k * count + next];
      const [c, d] = [((k + 1) % sides) * count + i, ((k + 1) % sides) * count + next];
      triangles.push(a, c, b, b, c, d);
    });
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** A torus about z as flat sides, all corners on it. */
export function torus(major: number, minor: number, sides: number): TriangleMesh {
  const section = Array.from({ length: sides }, (_, i): [number, number] => {
    const angle = (2 * Math.PI * i) / sides;
    return [major + minor * Math.cos(angle), minor * Math.sin(angle)];
  });
  return revolved(section, sides);
}

/** A ball as eight triangles halved `levels` times, all corners on it. */
export function ball(radius: number, levels: number): TriangleMesh {
  const unit: [number, number, number][] = [
    [1, 0, 0],
    [0, 1, 0],
    [-1, 0, 0],
    [0, -1, 0],
    [0, 0, 1],
    [0, 0, -1],
  ];
  let faces = [0, 1, 2, 3].flatMap((i): [number, number, number][] => [
    [i, (i + 1) % 4, 4],
    [(i + 1) % 4, i, 5],
  ]);
  const middles = new Map<string, number>();
  const middle = (a: number, b: number): number => {
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    const known = middles.get(key);
    if (known !== undefined) return known;
    const sum = unit[a]!.map((value, i) => value + unit[b]![i]!);
    const size = Math.hypot(...sum);
    unit.push([sum[0]! / size, sum[1]! / size, sum[2]! / size]);
    middles.set(key, unit.length - 1);
    return unit.length - 1;
  };
  for (let level = 0; level < levels; level++) {
    faces = faces.flatMap(([a, b, c]): [number, number, number][] => {
      const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)];
      return [
        [a, ab, ca],
        [ab, b, bc],
        [ca, bc, c],
        [ab, bc, ca],
      ];
    });
  }
  return {
    positions: Float64Array.from(unit.flat().map((value) => value * radius)),
    triangles: Uint32Array.from(faces.flat()),
  };
}

/** A box as twelve triangles. */
export function boxMesh(
  min: readonly [number, number, number],
  max: readonly [number, number, number],
): TriangleMesh {
  const positions = Array.from({ length: 8 }, (_, i) =>
    [0, 1, 2].map((axis) => (i & (1 << axis) ? max[axis]! : min[axis]!)),
  );
  const squares = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  return {
    positions: Float64Array.from(positions.flat()),
    triangles: Uint32Array.from(squares.flatMap(([a, b, c, d]) => [a!, b!, c!, a!, c!, d!])),
  };
}

/** Enclosed volume by the divergence theorem, + where triangles are counterclockwise seen from outside. */
export function meshVolume({ positions, triangles }: TriangleMesh): number {
  const at = (i: number, axis: number) => positions[3 * triangles[i]! + axis]!;
  let six = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    six +=
      at(t, 0) * (at(t + 1, 1) * at(t + 2, 2) - at(t + 1, 2) * at(t + 2, 1)) +
      at(t, 1) * (at(t + 1, 2) * at(t + 2, 0) - at(t + 1, 0) * at(t + 2, 2)) +
      at(t, 2) * (at(t + 1, 0) * at(t + 2, 1) - at(t + 1, 1) * at(t + 2, 0));
  }
  return six / 6;
}

/** The solid modeler's mesh as ours. Its vertices are 32-bit. */
export function meshOf(solid: Manifold): TriangleMesh {
  const { numProp, vertProperties, triVerts } = solid.getMesh();
  const positions = new Float64Array((vertProperties.length / numProp) * 3);
  for (let i = 0; i < positions.length; i++) {
    positions[i] = vertProperties[Math.floor(i / 3) * numProp + (i % 3)]!;
  }
  return { positions, triangles: Uint32Array.from(triVerts) };
}
