import { POSE } from "./poseRow.ts";
import { SIDE } from "./sideRow.ts";

/** Where the rates stand in a rate row: turn and slide of the knuckle per radian of lower arm, then per steer. */
export const RATE = {
  /** Angular velocity of the knuckle (and wheel) per radian of lower arm, inner end held. */
  armTurn: 0,
  /** Velocity of the wheel center per radian of lower arm. */
  armSlide: 3,
  /** Angular velocity per unit of inner end motion given (see `wheelRatesTo`). */
  steerTurn: 6,
  steerSlide: 9,
} as const;

/** Numbers in a rate row. */
export const RATE_ROW = 12;

/**
 * The exact first derivatives of a pose, by the rigid-body velocities of the linkage: the upper ball
 * joint's speed keeps the span, the knuckle's turn about its steering axis keeps the tie rod length.
 * Left-hand frame. Infinite where a joint is at the border of its reach.
 *
 * @param pose a row filled by `poseRowTo` with the same side and (cosArm, sinArm).
 * @param vx, vy, vz velocity of the inner tie rod end per unit of steer; who reads the arm's part alone, leaves it out.
 */
export function wheelRatesTo(
  out: Float64Array,
  at: number,
  side: Float64Array,
  pose: Float64Array,
  poseAt: number,
  cosArm: number,
  sinArm: number,
  vx = 0,
  vy = 0,
  vz = 0,
): void {
  const lx = pose[poseAt]!;
  const ly = pose[poseAt + 1]!;
  const lz = pose[poseAt + 2]!;
  const kx = pose[poseAt + POSE.knuckleZ]!;
  const ky = pose[poseAt + POSE.knuckleZ + 1]!;
  const kz = pose[poseAt + POSE.knuckleZ + 2]!;
  const span = side[SIDE.span]!;

  const vlx = cosArm * side[SIDE.lowerQuarter]! - sinArm * side[SIDE.lowerRadial]!;
  const vly = cosArm * side[SIDE.lowerQuarter + 1]! - sinArm * side[SIDE.lowerRadial + 1]!;
  const vlz = cosArm * side[SIDE.lowerQuarter + 2]! - sinArm * side[SIDE.lowerRadial + 2]!;

  // Tangent of the upper arm's circle at the ball joint: axis × radius.
  const rux = pose[poseAt + 3]! - side[SIDE.upperFoot]!;
  const ruy = pose[poseAt + 4]! - side[SIDE.upperFoot + 1]!;
  const ruz = pose[poseAt + 5]! - side[SIDE.upperFoot + 2]!;
  const px = side[SIDE.upperRadial]!;
  const py = side[SIDE.upperRadial + 1]!;
  const pz = side[SIDE.upperRadial + 2]!;
  const qx = side[SIDE.upperQuarter]!;
  const qy = side[SIDE.upperQuarter + 1]!;
  const qz = side[SIDE.upperQuarter + 2]!;
  const rSq = px * px + py * py + pz * pz;
  const c = (rux * px + ruy * py + ruz * pz) / rSq;
  const s = (rux * qx + ruy * qy + ruz * qz) / rSq;
  const tux = c * qx - s * px;
  const tuy = c * qy - s * py;
  const tuz = c * qz - s * pz;
  const upperRate = (kx * vlx + ky * vly + kz * vlz) / (kx * tux + ky * tuy + kz * tuz);
  const ux = upperRate * tux - vlx;
  const uy = upperRate * tuy - vly;
  const uz = upperRate * tuz - vlz;
  // ω across the steering axis: k × (v_upper − v_lower) / span.
  const ax = (ky * uz - kz * uy) / span;
  const ay = (kz * ux - kx * uz) / span;
  const az = (kx * uy - ky * ux) / span;

  const ox = pose[poseAt + 6]! - lx;
  const oy = pose[poseAt + 7]! - ly;
  const oz = pose[poseAt + 8]! - lz;
  const tx = pose[poseAt + 6]! - pose[poseAt + 9]!;
  const ty = pose[poseAt + 7]! - pose[poseAt + 10]!;
  const tz = pose[poseAt + 8]! - pose[poseAt + 11]!;
  // How fast the tie rod would stretch per radian of knuckle turn: t·(k × o).
  const lever = tx * (ky * oz - kz * oy) + ty * (kz * ox - kx * oz) + tz * (kx * oy - ky * ox);
  const vox = vlx + ay * oz - az * oy;
  const voy = vly + az * ox - ax * oz;
  const voz = vlz + ax * oy - ay * ox;
  const armSpin = -(tx * vox + ty * voy + tz * voz) / lever;
  const steerSpin = (tx * vx + ty * vy + tz * vz) / lever;

  const wx = pose[poseAt + 21]! - lx;
  const wy = pose[poseAt + 22]! - ly;
  const wz = pose[poseAt + 23]! - lz;
  const tax = ax + armSpin * kx;
  const tay = ay + armSpin * ky;
  const taz = az + armSpin * kz;
  out[at] = tax;
  out[at + 1] = tay;
  out[at + 2] = taz;
  out[at + 3] = vlx + tay * wz - taz * wy;
  out[at + 4] = vly + taz * wx - tax * wz;
  out[at + 5] = vlz + tax * wy - tay * wx;
  out[at + 6] = steerSpin * kx;
  out[at + 7] = steerSpin * ky;
  out[at + 8] = steerSpin * kz;
  out[at + 9] = steerSpin * (ky * wz - kz * wy);
  out[at + 10] = steerSpin * (kz * wx - kx * wz);
  out[at + 11] = steerSpin * (kx * wy - ky * wx);
}
