import { dot, sub, type Vec3, vecAt } from "../../src/geometry/vec.ts";
import { POSE } from "../../src/suspension/poseRow.ts";

const FRAME = [POSE.knuckleX, POSE.knuckleY, POSE.knuckleZ] as const;

/** A point in the knuckle frame of a pose row (both left-hand frame). */
export function inKnuckleFrame(row: Float64Array, point: Vec3): Vec3 {
  const d = sub(point, vecAt(row, POSE.lowerBallJoint));
  return [dot(d, vecAt(row, FRAME[0])), dot(d, vecAt(row, FRAME[1])), dot(d, vecAt(row, FRAME[2]))];
}

/** Where a point that rides on the knuckle and stood at `point` in pose `from` stands in pose `to`. */
export function knuckleFixedPoint(point: Vec3, from: Float64Array, to: Float64Array): Vec3 {
  const [x, y, z] = inKnuckleFrame(from, point);
  const along = (i: number) =>
    to[POSE.lowerBallJoint + i]! + x * to[FRAME[0] + i]! + y * to[FRAME[1] + i]! + z * to[FRAME[2] + i]!;
  return [along(0), along(1), along(2)];
}
