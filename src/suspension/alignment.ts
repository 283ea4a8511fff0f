import { POSE } from "./poseRow.ts";

/**
 * Wheel alignment of one side, radians and mm, signs as ISO 8855 / SAE J670 have them (see
 * `public/docs/definitions.md`): the same sign means the same thing to a mechanic on both sides.
 */
export interface Alignment {
  /** + = top leans outward: the lean a gauge on the wheel reads, asin(−z of the outboard wheel axis). */
  readonly camber: number;
  /** + = wheel turned left, about +Z. */
  readonly steerAngle: number;
  /** + = toe-in. */
  readonly toe: number;
  /** + = steering axis leans back at the top, projected on the side view. */
  readonly caster: number;
  /** + = steering axis leans inboard at the top, projected on the front view. */
  readonly kingpinInclination: number;
  /** mm, + = contact patch outboard of where the steering axis meets the ground, across the heading. */
  readonly scrubRadius: number;
  /** mm, + = that point ahead of the contact patch, along the heading. */
  readonly mechanicalTrail: number;
}

/**
 * Reads the alignment off a pose row (left-hand frame). The ground is the level through the contact
 * patch. @param isRight the row is the mirrored right side: only `steerAngle` changes its sign.
 */
export function alignmentOf(pose: Float64Array, at: number, isRight: boolean): Alignment {
  const nx = pose[at + POSE.wheelAxis]!;
  const ny = pose[at + POSE.wheelAxis + 1]!;
  const nz = pose[at + POSE.wheelAxis + 2]!;
  const kx = pose[at + POSE.knuckleZ]!;
  const ky = pose[at + POSE.knuckleZ + 1]!;
  const kz = pose[at + POSE.knuckleZ + 2]!;
  const level = Math.sqrt(nx * nx + ny * ny);
  // Heading and outboard direction of the wheel on the ground.
  const hx = ny / level;
  const hy = -nx / level;
  const down = (pose[at + POSE.contactPatch + 2]! - pose[at + POSE.lowerBallJoint + 2]!) / kz;
  const toPatchX = pose[at + POSE.contactPatch]! - (pose[at + POSE.lowerBallJoint]! + down * kx);
  const toPatchY = pose[at + POSE.contactPatch + 1]! - (pose[at + POSE.lowerBallJoint + 1]! + down * ky);
  const turnedLeft = Math.atan2(-nx, ny);
  return {
    // −asin(z), written with atan2 so that a wheel lying flat still has an answer.
    camber: Math.atan2(-nz, level),
    steerAngle: isRight ? -turnedLeft : turnedLeft,
    toe: -turnedLeft,
    caster: Math.atan2(-kx, kz),
    kingpinInclination: Math.atan2(-ky, kz),
    scrubRadius: (toPatchX * nx + toPatchY * ny) / level,
    mechanicalTrail: -(toPatchX * hx + toPatchY * hy),
  };
}
