import { MATCHED_SIDE_TOLERANCE, MIN_MATCHED_HEIGHT } from "../reading/limits.ts";
import { cross, difference, distanceToLine, dot, norm, scaled } from "../reading/pointMath.ts";
import type { Point } from "../types/truckTypes.ts";

export type ThreePoints = readonly [Point, Point, Point];

/** Point numbers at the ends of each side. */
const SIDES = [
  [0, 1],
  [1, 2],
  [2, 0],
] as const;

/** A side of the three points that is not as long on the truck as in the mesh. */
export interface UnevenSide {
  /** Point numbers of its ends, counted from 0. */
  readonly ends: readonly [number, number];
  readonly inMesh: number;
  readonly onTruck: number;
}

/** The side whose lengths differ most, if by more than the tolerance; null = they agree. mm. */
export function unevenSide(from: ThreePoints, to: ThreePoints): UnevenSide | null {
  const sides = SIDES.map((ends): UnevenSide => {
    const [a, b] = ends;
    return { ends, inMesh: norm(difference(from[b], from[a])), onTruck: norm(difference(to[b], to[a])) };
  });
  const excess = ({ inMesh, onTruck }: UnevenSide) => Math.abs(inMesh - onTruck);
  const worst = sides.reduce((a, b) => (excess(b) > excess(a) ? b : a));
  return excess(worst) <= MATCHED_SIDE_TOLERANCE ? null : worst;
}

/** Whether three points are too near one line, or one another, to fix a plane. mm. */
export function areNearlyInLine(points: ThreePoints): boolean {
  return !SIDES.every(([a, b], i) => {
    const direction = difference(points[b], points[a]);
    if (!(norm(direction) >= MIN_MATCHED_HEIGHT)) return false;
    return distanceToLine(points[SIDES[(i + 1) % 3]![1]], points[a], direction) >= MIN_MATCHED_HEIGHT;
  });
}

/**
 * The rows of the turn that takes the direction from the first point to the second, and the side of it on which
 * the third lies, from `from` to `to`. A proper rotation, whatever the sides' lengths. Neither may be in line.
 */
export function turnBetween(from: ThreePoints, to: ThreePoints): readonly [Point, Point, Point] {
  const [a1, a2, a3] = frameOf(from);
  const [b1, b2, b3] = frameOf(to);
  const row = (i: 0 | 1 | 2): Point => [
    b1[i] * a1[0] + b2[i] * a2[0] + b3[i] * a3[0],
    b1[i] * a1[1] + b2[i] * a2[1] + b3[i] * a3[1],
    b1[i] * a1[2] + b2[i] * a2[2] + b3[i] * a3[2],
  ];
  return [row(0), row(1), row(2)];
}

/** Unit axes: from the first to the second, then in the plane toward the third, then normal to it (right-handed). */
function frameOf([a, b, c]: ThreePoints): readonly [Point, Point, Point] {
  const along = unit(difference(b, a));
  const toThird = difference(c, a);
  const across = unit(difference(toThird, scaled(along, dot(toThird, along))));
  return [along, across, cross(along, across)];
}

function unit(v: Point): Point {
  return scaled(v, 1 / norm(v));
}
