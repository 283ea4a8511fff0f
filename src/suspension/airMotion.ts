import { dot, length, sub, type Vec3, vecAt } from "../geometry/vec.ts";
import { armAngleFor } from "./armAngle.ts";
import type { SideModel } from "./frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { SIDE } from "./sideRow.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "./wheelRates.ts";

/** How an air spring stands and moves at one travel, straight ahead; mm, left-hand frame. */
export interface AirMotion {
  readonly travel: number;
  /** Between the mounts. */
  readonly height: number;
  /** How much the spring shortens per travel of the wheel center, + = bump shortens it. Exact derivative. */
  readonly motionRatio: number;
  /** How much the contact patch rises per travel of the wheel center: 1 but for the change of camber. */
  readonly patchRatio: number;
}

/** @returns null where the wheel cannot stand at that travel. @param bodyMount, armMount as measured, left-hand frame */
export function airMotion(
  side: SideModel,
  bodyMount: Vec3,
  armMount: Vec3,
  travel: number,
): AirMotion | null {
  const arm = armAngleFor(side, travel);
  const pose = new Float64Array(POSE_ROW);
  const rates = new Float64Array(RATE_ROW);
  const cos = Math.cos(arm);
  const sin = Math.sin(arm);
  const [x, y, z] = side.innerAtRest;
  if (poseRowTo(pose, 0, side.row, cos, sin, x, y, z) !== PoseStatus.Ok) return null;
  wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin);
  const { mount, velocity } = mountAt(side.row, armMount, cos, sin);
  const line = sub(mount, bodyMount);
  const height = length(line);
  const rise = rates[RATE.armSlide + 2]!;
  // The contact patch is the lowest point of the tire's circle, so to first order it rises as the point of the wheel
  // that is there: the center's motion and ω × (patch − center).
  const [toX, toY] = [0, 1].map((i) => pose[POSE.contactPatch + i]! - pose[POSE.wheelCenter + i]!);
  const patchRise = rise + rates[RATE.armTurn]! * toY! - rates[RATE.armTurn + 1]! * toX!;
  return {
    travel,
    height,
    motionRatio: -dot(line, velocity) / height / rise,
    patchRatio: patchRise / rise,
  };
}

/** A point of the lower arm at its angle, and its motion per radian. */
function mountAt(row: Float64Array, point: Vec3, cos: number, sin: number): { mount: Vec3; velocity: Vec3 } {
  const foot = vecAt(row, SIDE.lowerFoot);
  const radial = vecAt(row, SIDE.lowerRadial);
  const quarter = vecAt(row, SIDE.lowerQuarter);
  const sizeSq = dot(radial, radial);
  const off = sub(point, foot);
  const r = dot(off, radial) / sizeSq;
  const q = dot(off, quarter) / sizeSq;
  const at = (i: number, a: number, b: number) => a * radial[i]! + b * quarter[i]!;
  // Along the pivot line nothing moves.
  const along = (i: number) => off[i]! - at(i, r, q);
  const [a, b] = [r * cos - q * sin, r * sin + q * cos];
  const vec = (f: (i: number) => number): Vec3 => [f(0), f(1), f(2)];
  return {
    mount: vec((i) => foot[i]! + along(i) + at(i, a, b)),
    velocity: vec((i) => at(i, -b, a)),
  };
}
