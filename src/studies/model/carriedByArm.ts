import { cross, dot, length, scale, sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";

/** Where an arm stands in a side row, and its ball joint in a pose row. */
export interface ArmAt {
  readonly foot: number;
  readonly radial: number;
  readonly quarter: number;
  readonly joint: number;
}

export const LOWER_ARM: ArmAt = {
  foot: SIDE.lowerFoot,
  radial: SIDE.lowerRadial,
  quarter: SIDE.lowerQuarter,
  joint: POSE.lowerBallJoint,
};
export const UPPER_ARM: ArmAt = {
  foot: SIDE.upperFoot,
  radial: SIDE.upperRadial,
  quarter: SIDE.upperQuarter,
  joint: POSE.upperBallJoint,
};

/** Unit direction of the arm's pivot line about which it turns up. */
export function armAxisOf(side: Float64Array, arm: ArmAt): Vec3 {
  const radial = vecAt(side, arm.radial);
  return scale(cross(radial, vecAt(side, arm.quarter)), 1 / dot(radial, radial));
}

/** A vector fixed in an arm by its parts along the pivot line, the radius as measured and the quarter turn on. */
export interface CarriedByArm {
  readonly axis: Vec3;
  readonly along: number;
  readonly radial: number;
  readonly quarter: number;
}

/** Takes apart a vector that the arm carries, as it stands with the arm at the pose (null: as measured). */
export function carriedByArm(
  side: Float64Array,
  arm: ArmAt,
  v: Vec3,
  pose: Float64Array | null,
): CarriedByArm {
  const axis = armAxisOf(side, arm);
  const size = length(vecAt(side, arm.radial));
  const radial = scale(vecAt(side, arm.radial), 1 / size);
  const quarter = scale(vecAt(side, arm.quarter), 1 / size);
  const out = pose === null ? [1, 0] : turnOf(side, arm, pose, 0);
  const [cos, sin] = out as [number, number];
  const r = dot(v, radial);
  const q = dot(v, quarter);
  // Turned back by the arm's angle.
  return { axis, along: dot(v, axis), radial: cos * r + sin * q, quarter: cos * q - sin * r };
}

function turnOf(side: Float64Array, arm: ArmAt, pose: Float64Array, at: number): [number, number] {
  const toJoint = sub(vecAt(pose, at + arm.joint), vecAt(side, arm.foot));
  const radial = vecAt(side, arm.radial);
  const sizeSq = dot(radial, radial);
  return [dot(toJoint, radial) / sizeSq, dot(toJoint, vecAt(side, arm.quarter)) / sizeSq];
}

/** out = the carried vector at a pose; allocates nothing. */
export function carriedByArmTo(
  out: Float64Array,
  side: Float64Array,
  arm: ArmAt,
  carried: CarriedByArm,
  pose: Float64Array,
  at: number,
): void {
  const { axis, along } = carried;
  const { foot, radial: r, quarter: q, joint } = arm;
  const dx = pose[at + joint]! - side[foot]!;
  const dy = pose[at + joint + 1]! - side[foot + 1]!;
  const dz = pose[at + joint + 2]! - side[foot + 2]!;
  const rx = side[r]!;
  const ry = side[r + 1]!;
  const rz = side[r + 2]!;
  const qx = side[q]!;
  const qy = side[q + 1]!;
  const qz = side[q + 2]!;
  const sizeSq = rx * rx + ry * ry + rz * rz;
  const cos = (dx * rx + dy * ry + dz * rz) / sizeSq;
  const sin = (dx * qx + dy * qy + dz * qz) / sizeSq;
  const perSize = 1 / Math.sqrt(sizeSq);
  const radial = (carried.radial * cos - carried.quarter * sin) * perSize;
  const quarter = (carried.radial * sin + carried.quarter * cos) * perSize;
  out[0] = along * axis[0] + radial * rx + quarter * qx;
  out[1] = along * axis[1] + radial * ry + quarter * qy;
  out[2] = along * axis[2] + radial * rz + quarter * qz;
}
