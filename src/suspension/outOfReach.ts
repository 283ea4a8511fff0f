import { MOTION, MOTION_ROW } from "../geometry/motionRow.ts";
import type { SideModel } from "./frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "./motionBound.ts";
import { POSE, POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { SIDE } from "./sideRow.ts";
import { RATE_ROW, wheelRatesTo } from "./wheelRates.ts";

// Leaf scratch.
const pose = new Float64Array(POSE_ROW);
const rates = new Float64Array(RATE_ROW);
const motion = new Float64Array(MOTION_ROW);
const still: InnerEndSpread = { speedMost: 0, velocityOff: 0 };

/**
 * Whether no pose of a cell of lower arm angle × steer can be: the outer tie rod end runs on a circle about
 * the steering axis, and its distance from the inner end, 1-Lipschitz in both, stays above or below the tie
 * rod's length all over the cell. The steering axis's own motion is bounded as in `motionBoundTo`.
 * @param inner inner tie rod end at the middle; @param innerOff how far it can be from there, mm.
 */
export function provenOutOfReach(
  side: SideModel,
  armAngle: number,
  armHalf: number,
  inner: readonly [number, number, number],
  innerOff: number,
): boolean {
  const { row, innerAtRest } = side;
  const cos = Math.cos(armAngle);
  const sin = Math.sin(armAngle);
  if (poseRowTo(pose, 0, row, cos, sin, ...innerAtRest) !== PoseStatus.Ok) return false;
  wheelRatesTo(rates, 0, row, pose, 0, cos, sin, 0, 0, 0);
  if (!motionBoundTo(motion, row, pose, rates, cos, sin, armHalf, 0, still, [0, 0, 0])) return false;
  const axisOff = motion[MOTION.armTurnMost]! * armHalf;
  const [armX, armY, armZ] = [row[SIDE.steeringArm]!, row[SIDE.steeringArm + 1]!, row[SIDE.steeringArm + 2]!];
  const radius = Math.sqrt(armX * armX + armY * armY);
  let along = 0;
  let distanceSq = 0;
  let lowerSq = 0;
  for (let i = 0; i < 3; i++) {
    const k = pose[POSE.knuckleZ + i]!;
    const d = inner[i]! - pose[POSE.lowerBallJoint + i]! - armZ * k;
    along += d * k;
    distanceSq += d * d;
    lowerSq += row[SIDE.lowerQuarter + i]! ** 2;
  }
  const across = Math.sqrt(Math.max(0, distanceSq - along * along));
  const nearest = Math.sqrt(along * along + (across - radius) ** 2);
  const farthest = Math.sqrt(along * along + (across + radius) ** 2);
  const slack = innerOff + Math.sqrt(lowerSq) * armHalf + (Math.abs(armZ) + radius) * axisOff;
  const rod = row[SIDE.tieRodLength]!;
  return nearest - slack > rod || farthest + slack < rod;
}
