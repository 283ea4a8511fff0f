import { CORNER_LOOKS, EAR_LOOKS, MAX_POLYGON_CORNERS } from "./limits.ts";
import { MeshFault } from "./meshBuilder.ts";

/** How many more corners may be looked at in a file. */
export interface CutWork {
  left: number;
}

/** For a file of so many bytes. */
export function cutWork(bytes: number): CutWork {
  const { least, perByte, most } = CORNER_LOOKS;
  return { left: Math.min(Math.max(least, perByte * bytes), most) };
}

/**
 * Cuts a polygon into triangles by clipping ears in its mean plane (Newell's normal), so that a hollow corner
 * stays hollow. Where an outline crosses itself or runs straight there is no ear, and any corner is cut off.
 * @param positions x, y, z of each corner, in order @param work shared by all polygons of a file
 * @returns corner numbers, three a triangle
 * @throws MeshFault for fewer than 3 corners, or more than can be cut in sensible time
 */
export function splitPolygon(
  positions: readonly number[],
  where: () => string,
  work: CutWork,
): readonly number[] {
  const count = positions.length / 3;
  if (count < 3)
    throw new MeshFault(where(), `a face has ${count} corners; it takes 3 or more, export it again`);
  if (count > MAX_POLYGON_CORNERS)
    throw new MeshFault(
      where(),
      `a face has more than ${MAX_POLYGON_CORNERS} corners; export it as triangles`,
    );
  if (count === 3) return [0, 1, 2];
  if (count === 4) return splitQuad(positions);
  const flat = flattened(positions, count);
  const rest = Array.from({ length: count }, (_, i) => i);
  // Only a corner that does not bulge can lie in an ear; one that bulges goes on doing so as ears are cut off.
  let hollow = rest.filter((_, i) => !bulges(flat, cornersAt(rest, i)));
  const isHollow = new Uint8Array(count);
  for (const corner of hollow) isHollow[corner] = 1;
  const triangles: number[] = [];
  let looks = EAR_LOOKS * count;
  let at = 0;
  while (rest.length > 3) {
    let tried = 0;
    while (tried < rest.length && !isEar(flat, cornersAt(rest, at % rest.length), hollow)) {
      at++;
      tried++;
      work.left -= hollow.length;
      if (--looks < 0 || work.left < 0)
        throw new MeshFault(where(), "a face is too tangled to cut up; export it as triangles");
    }
    at %= rest.length;
    triangles.push(...cornersAt(rest, at));
    const [cut] = rest.splice(at, 1);
    work.left -= hollow.length;
    if (isHollow[cut!] === 0) continue;
    // It bulges now that its neighbors are gone.
    isHollow[cut!] = 0;
    hollow = hollow.filter((corner) => corner !== cut);
  }
  triangles.push(...rest);
  return triangles;
}

/** Along the diagonal from the first corner, unless that runs outside: its halves then face opposite ways. */
function splitQuad(positions: readonly number[]): readonly number[] {
  const along = (corner: number, axis: number) => positions[3 * corner + axis]! - positions[axis]!;
  const facing = (a: number, b: number) =>
    [0, 1, 2].map((axis) => {
      const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
      return along(a, u) * along(b, v) - along(a, v) * along(b, u);
    });
  const other = facing(2, 3);
  const agree = facing(1, 2).reduce((sum, value, axis) => sum + value * other[axis]!, 0) >= 0;
  return agree ? [0, 1, 2, 0, 2, 3] : [0, 1, 3, 1, 2, 3];
}

function cornersAt(rest: readonly number[], i: number): Corners {
  return [rest[(i + rest.length - 1) % rest.length]!, rest[i]!, rest[(i + 1) % rest.length]!];
}

type Corners = readonly [number, number, number];

/** Bulges outward, and no other corner lies in its triangle. */
function isEar(flat: Float64Array, corners: Corners, hollow: readonly number[]): boolean {
  if (!bulges(flat, corners)) return false;
  const [a, b, c] = corners;
  return !hollow.some((p) => {
    if (p === a || p === b || p === c || isSame(flat, p, a) || isSame(flat, p, b) || isSame(flat, p, c))
      return false;
    return turnOf(flat, a, b, p) >= 0 && turnOf(flat, b, c, p) >= 0 && turnOf(flat, c, a, p) >= 0;
  });
}

function bulges(flat: Float64Array, [a, b, c]: Corners): boolean {
  return turnOf(flat, a, b, c) > 0;
}

function isSame(flat: Float64Array, p: number, q: number): boolean {
  return flat[2 * p] === flat[2 * q] && flat[2 * p + 1] === flat[2 * q + 1];
}

/** Twice the signed area of a triangle, + = counterclockwise. */
function turnOf(flat: Float64Array, a: number, b: number, c: number): number {
  const [ax, ay] = [flat[2 * a]!, flat[2 * a + 1]!];
  return (flat[2 * b]! - ax) * (flat[2 * c + 1]! - ay) - (flat[2 * b + 1]! - ay) * (flat[2 * c]! - ax);
}

/** The corners without the axis that the polygon faces most, counterclockwise. */
function flattened(positions: readonly number[], count: number): Float64Array {
  const normal = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const j = (i + 1) % count;
    for (let axis = 0; axis < 3; axis++) {
      const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
      normal[axis]! +=
        (positions[3 * i + u]! - positions[3 * j + u]!) * (positions[3 * i + v]! + positions[3 * j + v]!);
    }
  }
  const sizes = normal.map(Math.abs);
  const axis = sizes.indexOf(Math.max(...sizes));
  const [u, v] = normal[axis]! >= 0 ? [(axis + 1) % 3, (axis + 2) % 3] : [(axis + 2) % 3, (axis + 1) % 3];
  const flat = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    flat[2 * i] = positions[3 * i + u]!;
    flat[2 * i + 1] = positions[3 * i + v]!;
  }
  return flat;
}
