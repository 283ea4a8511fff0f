import type { Point } from "./types.ts";

/** From `b` to `a`. */
export function difference(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** Length of a vector. */
export function norm(v: Point): number {
  return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
}

/** Distance from a point to the line through `on` along `direction` (any length but 0). */
export function distanceToLine(point: Point, on: Point, direction: Point): number {
  const [x, y, z] = difference(point, on);
  const [u, v, w] = direction;
  return norm([y * w - z * v, z * u - x * w, x * v - y * u]) / norm(direction);
}
