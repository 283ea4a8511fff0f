import { addScaled, cross, dot, length, normalize, sub, type Vec3 } from "../../geometry/vec.ts";

/** What of a knuckle shows on the truck it stands on. mm and radians; see `public/docs/definitions.md`. */
export interface KnuckleAsStands {
  readonly span: number;
  readonly pinHeight: number;
  readonly pinAngle: number;
  /** From the steering axis to the wheel's center plane, along the pin; the hub face is the wheel's offset farther. */
  readonly toWheelCenter: number;
  readonly steeringArm: Vec3;
}

/**
 * The knuckle between two ball joints that carries its wheel where it stands, straight ahead, without camber: a degree of it
 * moves the pin's height by under 3 mm and the hub face by under 1. Null = the joints are one upon the other.
 */
export function knuckleAsStands(
  lowerBallJoint: Vec3,
  upperBallJoint: Vec3,
  wheelCenter: Vec3,
  tieRodOuter: Vec3,
): KnuckleAsStands | null {
  const up = sub(upperBallJoint, lowerBallJoint);
  const span = length(up);
  if (!(span > 1) || !(up[2] > 1)) return null;
  const z = normalize(up);
  const y = normalize(addScaled([0, 1, 0], z, -z[1]));
  const x = cross(y, z);
  const pinAngle = Math.atan2(-z[1], z[2]);
  const wheel = sub(wheelCenter, lowerBallJoint);
  const toWheelCenter = dot(wheel, y) / Math.cos(pinAngle);
  const arm = sub(tieRodOuter, lowerBallJoint);
  return {
    span,
    pinHeight: dot(wheel, z) + toWheelCenter * Math.sin(pinAngle),
    pinAngle,
    toWheelCenter,
    steeringArm: [dot(arm, x), dot(arm, y), dot(arm, z)],
  };
}
