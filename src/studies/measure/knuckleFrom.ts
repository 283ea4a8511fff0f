import { addScaled, cross, dot, length, scale, sub, type Vec3 } from "../../geometry/vec.ts";

/** Points of the left side as they were measured, vehicle axes, mm. */
export interface KnucklePoints {
  readonly lowerJoint: Vec3;
  readonly upperJoint: Vec3;
  /** Its fore and aft place is not used: the pin crosses the steering axis. */
  readonly wheelCenter: Vec3;
}

/** The dimensions of a knuckle that stands in a truck. mm and radians; see the setup file. */
export interface KnuckleFound {
  readonly span: number;
  readonly pinAngle: number;
  readonly pinHeight: number;
  readonly hubFace: number;
}

/**
 * The knuckle that holds a wheel where it was measured, straight ahead without toe. The steering axis u runs from the lower to
 * the upper joint; the pin points along w = (0, cos c, −sin c), c camber, so that w · u = −sin a. The wheel center lies at
 * lower joint + p u + s w, with s = hub face − wheel offset: its height gives p, its distance outboard s.
 * @param pinAngle as it was read; null = the wheel is taken as upright, which gives it
 * @param hubFace as it was read; null = the wheel center's distance outboard gives it
 * @param wheelOffset + = the mounting face lies outboard of the wheel's center plane
 */
export function knuckleFrom(
  points: KnucklePoints,
  pinAngle: number | null,
  hubFace: number | null,
  wheelOffset: number,
): KnuckleFound {
  const { lowerJoint, upperJoint, wheelCenter } = points;
  const axis = sub(upperJoint, lowerJoint);
  const span = length(axis);
  const [, uy, uz] = scale(axis, 1 / span);
  const angle = pinAngle ?? Math.asin(-uy);
  const camber = camberOf(uy, uz, angle);
  const [sin, cos] = [Math.sin(camber), Math.cos(camber)];
  const [, y, z] = sub(wheelCenter, lowerJoint);
  // p uy + s cos c = y and p uz − s sin c = z, or the second alone where s is read.
  const s = hubFace === null ? (y * uz - z * uy) / (cos * uz + sin * uy) : hubFace - wheelOffset;
  return { span, pinAngle: angle, pinHeight: (z + s * sin) / uz, hubFace: s + wheelOffset };
}

/** The camber at which a pin stands so far below square to the steering axis. */
function camberOf(uy: number, uz: number, pinAngle: number): number {
  const size = Math.hypot(uy, uz);
  return Math.acos(Math.max(-1, Math.min(1, -Math.sin(pinAngle) / size))) - Math.atan2(uz, uy);
}

/** A point of the truck in the axes of a knuckle: origin at the lower joint, z up the steering axis, y outboard, x forward. */
export function inKnuckle(point: Vec3, lowerJoint: Vec3, upperJoint: Vec3, pinAngle: number): Vec3 {
  const axis = sub(upperJoint, lowerJoint);
  const z = scale(axis, 1 / length(axis));
  const camber = camberOf(z[1], z[2], pinAngle);
  const pin: Vec3 = [0, Math.cos(camber), -Math.sin(camber)];
  const ahead = cross(pin, z);
  const x = scale(ahead, 1 / length(ahead));
  const y = cross(z, x);
  const from = addScaled(point, lowerJoint, -1);
  return [dot(from, x), dot(from, y), dot(from, z)];
}
