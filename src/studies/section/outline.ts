import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import type { Vec3 } from "../../geometry/vec.ts";

/** One line of a section: sheet coordinates u0, v0, u1, v1, …, mm. */
export interface Outline {
  /** The first point is not repeated at the end of a closed one. */
  readonly points: Float64Array;
  readonly closed: boolean;
}

/** Signed area inside a closed outline, mm², + = counterclockwise on the sheet. An open one has none. */
export function outlineArea({ points, closed }: Outline): number {
  if (!closed) return 0;
  let twice = 0;
  for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
    twice += points[j]! * points[i + 1]! - points[i]! * points[j + 1]!;
  }
  return 0.5 * twice;
}

/** How many straight pieces an outline has. */
export function segmentCount({ points, closed }: Outline): number {
  return points.length / 2 - (closed ? 0 : 1);
}

/** A plane across one vehicle axis, `at` mm along it. */
export interface SectionPlane {
  readonly axis: "x" | "y" | "z";
  readonly at: number;
}

/** Which vehicle axes lie across and up the sheet, and where one looks from. */
export interface SheetAxes {
  /** Places of the axis cut, of the one to the right of the sheet and of the one up it, in x, y, z. */
  readonly normal: 0 | 1 | 2;
  readonly right: 0 | 1 | 2;
  readonly up: 0 | 1 | 2;
  /** +1 where `right` × `up` is the positive axis, −1 where it is the negative one. */
  readonly facing: 1 | -1;
  readonly seenFrom: string;
}

/**
 * Sheet coordinates are the truck's own, so that a number on the drawing is a number in the setup file: an x
 * plane shows y to the right and z up, a y plane x and z, a z plane x and y. No view is mirrored.
 */
const SHEETS: Readonly<Record<SectionPlane["axis"], SheetAxes>> = {
  x: { normal: 0, right: 1, up: 2, facing: 1, seenFrom: "the front" },
  y: { normal: 1, right: 0, up: 2, facing: -1, seenFrom: "the right" },
  z: { normal: 2, right: 0, up: 1, facing: 1, seenFrom: "above" },
};

/** The sheet that a plane is drawn on. */
export function sheetAxes({ axis }: SectionPlane): SheetAxes {
  return SHEETS[axis];
}

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
