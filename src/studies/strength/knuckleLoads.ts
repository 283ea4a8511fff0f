import { cross, dot, length, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import { jointPlaces, pointOnPin } from "../../setup/types/jointPlaces.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { type ForceAt, plus, wrenchAbout } from "./wrench.ts";

/** What one knuckle carries, knuckle frame, N, N·mm, mm. */
export interface KnuckleLoads {
  readonly lowerBallJoint: Vec3;
  readonly upperBallJoint: Vec3;
  readonly tieRodOuter: Vec3;
  /** What the hub puts on the pin at its two bearings. The push along the pin is at one of them. */
  readonly innerBearing: Vec3;
  readonly outerBearing: Vec3;
  /** What the caliper puts on the knuckle where it holds; none of it on the pin. */
  readonly caliper: Vec3;
  /** Torque about the pin's axis that has no caliper to go through: at the pin's root. */
  readonly rootMoment: Vec3;
  /** Unit, up in vehicle axes: which way camber is told. */
  readonly up: Vec3;
}

/** The forces of the joints, and on wheel and hub from outside, turned into the knuckle frame. */
export interface OutsideForces {
  readonly lowerBallJoint: Vec3;
  readonly upperBallJoint: Vec3;
  readonly tieRodOuter: Vec3;
  readonly onHub: readonly ForceAt[];
  readonly up: Vec3;
}

/** Unit direction of the pin, outboard, knuckle frame. */
export function pinDirection({ pinAngle }: KnuckleSetup): Vec3 {
  return [0, Math.cos(pinAngle), -Math.sin(pinAngle)];
}

/** mm. A caliper nearer to the pin's axis has no lever to hold a torque by. */
const LEAST_LEVER = 1;

/**
 * Shares the load of the hub between caliper and bearings. Torque about the pin goes through the caliper: a force square to
 * its lever where it holds, its reaction on the hub. The rest goes through two bearings, each square to the pin; a push
 * inboard along the pin through the inner one, against its shoulder, a pull outboard through the outer one and its nut. The
 * thrust that tapered rollers make of their own load is left out: it squeezes the pin between them alone.
 * @returns null without bearings
 */
export function knuckleLoads(
  build: BuildSetup,
  knuckle: KnuckleSetup,
  { onHub, up, ...joints }: OutsideForces,
): KnuckleLoads | null {
  const bearings = build.pin?.bearings;
  if (!bearings) return null;
  const axis = pinDirection(knuckle);
  const inner = pointOnPin(knuckle, bearings.inner);
  const torque = dot(axis, wrenchAbout(inner, onHub).moment);
  const held = build.caliperAt === null ? undefined : jointPlaces(build, knuckle).get(build.caliperAt);
  const off = held && sub(held, inner);
  const lever = off && sub(off, scale(axis, dot(off, axis)));
  const isHeld = lever !== undefined && length(lever) > LEAST_LEVER;
  // f = T (n × r) / r² turns with r × f = T n.
  const caliper: Vec3 = isHeld ? scale(cross(axis, lever), torque / dot(lever, lever)) : [0, 0, 0];
  const reaction: readonly ForceAt[] = isHeld ? [{ at: held!, force: scale(caliper, -1) }] : [];
  const hub = wrenchAbout(inner, [...onHub, ...reaction]);
  const across = sub(hub.moment, scale(axis, dot(axis, hub.moment)));
  const along = dot(axis, hub.force);
  const radial = sub(hub.force, scale(axis, along));
  // d n × R = M, and n × (M × n) = M.
  const outerRadial = scale(cross(across, axis), 1 / (bearings.outer - bearings.inner));
  const innerRadial = sub(radial, outerRadial);
  const thrust = scale(axis, along);
  return {
    ...joints,
    up,
    innerBearing: along < 0 ? plus(innerRadial, thrust) : innerRadial,
    outerBearing: along < 0 ? outerRadial : plus(outerRadial, thrust),
    caliper,
    rootMoment: isHeld ? [0, 0, 0] : scale(axis, torque),
  };
}
