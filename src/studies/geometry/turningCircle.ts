import type { Side } from "../../suspension/frontEnd.ts";
import { type SidePose, solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { bodyDistance, tireDistance } from "./outermost.ts";

/** A turn at full lock. mm, diameters of circles about the center of the turn. */
export interface TurningCircle {
  readonly way: Side;
  /** Center of the turn in vehicle axes: on the rear axle line, where the outer front wheel's axis crosses it. */
  readonly center: readonly [x: number, y: number];
  /** Circle of the outer front contact patch. */
  readonly contact: number;
  /** Circle that the outer front tire clears up to the height of a curb. */
  readonly curbToCurb: number;
  /** Circle that everything known of the truck clears, at any height: front tires and body parts of the setup. */
  readonly wallToWall: number;
  /** What is farthest out: the outer tire, or a body part. */
  readonly wallBy: string;
  /**
   * How far apart both front wheels' axes cross the rear axle line, + = the inner one nearer to the truck (it turns more
   * than Ackermann-true), − = farther out: scrub.
   */
  readonly centersApart: number;
}

/** mm. 6 in, a street curb (common practice, no source). */
export const CURB_HEIGHT = 152.4;

/**
 * The turning circle at full lock and a travel (mm), turned slowly. The rear wheels head straight on, so the truck
 * turns about a point of the rear axle line; wheels that are not Ackermann-true do not agree on it, and the outer
 * front wheel, which carries more load, is taken to set it: in a truck with upright steering axes that makes the
 * contact circle 2 (l / sin δ_outer + scrub radius) (Reimpell, The Automotive Chassis, the chapter on steering; from
 * memory). Bumpers and fender corners that are not in the setup swing wider than `wallToWall` tells.
 * @returns null without a wheelbase, out of reach, and where the outer wheel does not turn that way.
 */
export function turningCircle(model: Model, way: Side, travel: number): TurningCircle | null {
  const { wheelbase, body } = model.setup.truck;
  const pose = solvePose(model.frontEnd, travel, way === "left" ? 1 : -1);
  if (wheelbase === null || !pose.ok) return null;
  const [inner, outer] = way === "left" ? [pose.left, pose.right] : [pose.right, pose.left];
  const sign = way === "left" ? 1 : -1;
  if (!(sign * outer.steerAngle > 0 && sign * inner.steerAngle > 0)) return null;
  const y = crossingOf(outer, -wheelbase);
  const center = [-wheelbase, y] as const;
  const { profile } = model.tire;
  const ground = outer.contactPatch[2];
  const contact = Math.hypot(outer.contactPatch[0] - center[0], outer.contactPatch[1] - y);
  const curb = tireDistance(outer, profile, center, { low: ground, high: ground + CURB_HEIGHT });
  const above = { low: ground, high: Number.POSITIVE_INFINITY };
  const known = [
    { name: "outer front tire", distance: tireDistance(outer, profile, center, above) },
    ...body.map((part) => ({ name: part.name, distance: bodyDistance(part, center) })),
  ];
  const wall = known.reduce((most, next) => (next.distance > most.distance ? next : most));
  return {
    way,
    center,
    contact: 2 * contact,
    curbToCurb: 2 * curb,
    wallToWall: 2 * wall.distance,
    wallBy: wall.name,
    centersApart: sign * (y - crossingOf(inner, -wheelbase)),
  };
}

/** Y at which a wheel's axis, seen from above, crosses the line at `x`. */
function crossingOf({ wheelCenter: c, wheelAxis: n }: SidePose, x: number): number {
  return c[1] + ((x - c[0]) / n[0]) * n[1];
}
