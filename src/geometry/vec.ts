/** Vectors as tuples, for work done once per setup or per shown pose. Sweeps use flat rows instead. */

export type Vec3 = readonly [x: number, y: number, z: number];

/** So many numbers in a row. */
export type Numbers<Count extends number, Row extends number[] = []> = Row["length"] extends Count
  ? Row
  : Numbers<Count, [...Row, number]>;

/** a − b. */
export function sub(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** a + s·b. */
export function addScaled(a: Vec3, b: Vec3, s: number): Vec3 {
  return [a[0] + s * b[0], a[1] + s * b[1], a[2] + s * b[2]];
}

export function scale(a: Vec3, s: number): Vec3 {
  return [a[0] * s, a[1] * s, a[2] * s];
}

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function length(a: Vec3): number {
  return Math.sqrt(dot(a, a));
}

/** a / |a|. @throws RangeError when a has no length: the caller must have checked. */
export function normalize(a: Vec3): Vec3 {
  const l = length(a);
  if (!(l > 0)) throw new RangeError(`normalize: needs a vector with length, got [${a.join(", ")}]`);
  return scale(a, 1 / l);
}

/** The mirror image across the truck's center plane: y turns its sign. */
export function mirrorY(a: Vec3): Vec3 {
  return [a[0], -a[1], a[2]];
}

/** Reads three numbers of a flat row. */
export function vecAt(row: ArrayLike<number>, at: number): Vec3 {
  return [row[at]!, row[at + 1]!, row[at + 2]!];
}
