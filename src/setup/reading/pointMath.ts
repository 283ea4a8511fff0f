import type { Point } from "../types/truckTypes.ts";

/** From `b` to `a`. */
export function difference(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** s·v. */
export function scaled(v: Point, s: number): Point {
  return [v[0] * s, v[1] * s, v[2] * s];
}

export function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** Length of a vector. */
export function norm(v: Point): number {
  return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
}

/** Distance from a point to the line through `on` along `direction` (any length but 0). */
export function distanceToLine(point: Point, on: Point, direction: Point): number {
  return norm(cross(difference(point, on), direction)) / norm(direction);
}

/** The direction with length 1; null for no direction. Scaled first, so that no square runs over or under. */
export function unitOf(direction: Point): Point | null {
  const largest = Math.max(...direction.map(Math.abs));
  if (!(largest > 0)) return null;
  const scaled: Point = [direction[0] / largest, direction[1] / largest, direction[2] / largest];
  const length = norm(scaled);
  return [scaled[0] / length, scaled[1] / length, scaled[2] / length];
}
