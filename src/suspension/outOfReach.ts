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

/** What `borderCellTo` says of a cell of poses at the border of the tie rod's reach. */
export interface BorderCell {
  /** Wheel center and unit axis with the steering arm in line with the tie rod: where the border itself is. */
  readonly wheel: Float64Array;
  readonly lowerBallJoint: Float64Array;
  /** mm. How far the lower ball joint can be from there in the cell. */
  slide: number;
  /** rad. How far the wheel can be turned from there in any pose of the cell. */
  turn: number;
}

export function borderCell(): BorderCell {
  return { wheel: new Float64Array(6), lowerBallJoint: new Float64Array(3), slide: 0, turn: 0 };
}

export const Border = { Unknown: 0, Empty: 1, Bounded: 2 } as const;
export type Border = (typeof Border)[keyof typeof Border];

/**
 * Looks at a cell of lower arm angle × steer that may hold the border of the tie rod's reach. The outer end
 * runs on a circle about the steering axis, and its distance from the inner end is 1-Lipschitz in both:
 * `Empty` when that stays off the tie rod's length all over the cell, so no pose is in it. Else `Bounded`:
 * every pose in the cell has its steering arm within acos(q) of the line to the inner end, q the least of
 * the cosine the tie rod's length asks for, which bounds the wheel however fast it moves there.
 * `Unknown` when the cell is too large to say. The steering axis's motion is bounded as in `motionBoundTo`.
 * @param inner inner tie rod end at the middle; @param innerOff how far it can be from there, mm.
 */
export function borderCellTo(
  out: BorderCell,
  side: SideModel,
  armAngle: number,
  armHalf: number,
  inner: readonly [number, number, number],
  innerOff: number,
): Border {
  const { row, innerAtRest } = side;
  const cos = Math.cos(armAngle);
  const sin = Math.sin(armAngle);
  if (poseRowTo(pose, 0, row, cos, sin, ...innerAtRest) !== PoseStatus.Ok) return Border.Unknown;
  wheelRatesTo(rates, 0, row, pose, 0, cos, sin, 0, 0, 0);
  if (!motionBoundTo(motion, row, pose, rates, cos, sin, armHalf, 0, still, [0, 0, 0])) return Border.Unknown;
  const axisOff = motion[MOTION.armTurnMost]! * armHalf;
  const [armX, armY, armZ] = [row[SIDE.steeringArm]!, row[SIDE.steeringArm + 1]!, row[SIDE.steeringArm + 2]!];
  const radius = Math.sqrt(armX * armX + armY * armY);
  const k = [pose[POSE.knuckleZ]!, pose[POSE.knuckleZ + 1]!, pose[POSE.knuckleZ + 2]!] as const;
  const d = [0, 0, 0];
  let along = 0;
  let distanceSq = 0;
  let lowerSq = 0;
  for (let i = 0; i < 3; i++) {
    d[i] = inner[i]! - pose[POSE.lowerBallJoint + i]! - armZ * k[i]!;
    along += d[i]! * k[i]!;
    distanceSq += d[i]! * d[i]!;
    lowerSq += row[SIDE.lowerQuarter + i]! ** 2;
  }
  const lowerOff = Math.sqrt(lowerSq) * armHalf;
  const distance = Math.sqrt(distanceSq);
  const across = Math.sqrt(Math.max(0, distanceSq - along * along));
  const nearest = Math.sqrt(along * along + (across - radius) ** 2);
  const farthest = Math.sqrt(along * along + (across + radius) ** 2);
  const rod = row[SIDE.tieRodLength]!;
  const slack = innerOff + lowerOff + (Math.abs(armZ) + radius) * axisOff;
  if (nearest - slack > rod || farthest + slack < rod) return Border.Empty;

  // cos(turn off the line) = c / (radius · across), c = (radius² + distance² − rod²) / 2.
  const lineOff = innerOff + lowerOff + Math.abs(armZ) * axisOff;
  const acrossOff = lineOff + distance * axisOff;
  const c = 0.5 * (radius * radius + distanceSq - rod * rod);
  const cOff = lineOff * (distance + 0.5 * lineOff);
  const q = (Math.abs(c) - cOff) / (radius * (across + acrossOff));
  if (!(q > 0 && acrossOff < 0.5 * across && axisOff < 0.5)) return Border.Unknown;
  const off = Math.acos(Math.min(1, q));
  // Angles from chords: an angle below π/2 is at most π/2 times its sine.
  out.turn = off + 0.5 * Math.PI * (2 * axisOff + acrossOff / (across - acrossOff));
  out.slide = lowerOff;
  // The knuckle with its arm straight at (c > 0) or straight away from the inner end.
  const sense = c > 0 ? 1 : -1;
  const toward = d.map((v, i) => (sense * (v - along * k[i]!)) / across);
  const side3 = [
    k[1] * toward[2]! - k[2] * toward[1]!,
    k[2] * toward[0]! - k[0] * toward[2]!,
    k[0] * toward[1]! - k[1] * toward[0]!,
  ];
  const [wx, wy, wz] = [row[SIDE.wheelCenter]!, row[SIDE.wheelCenter + 1]!, row[SIDE.wheelCenter + 2]!];
  for (let i = 0; i < 3; i++) {
    // Knuckle x and y from the arm's own direction in the knuckle's plane.
    const x = (armX * toward[i]! - armY * side3[i]!) / radius;
    const y = (armY * toward[i]! + armX * side3[i]!) / radius;
    out.lowerBallJoint[i] = pose[POSE.lowerBallJoint + i]!;
    out.wheel[i] = pose[POSE.lowerBallJoint + i]! + wx * x + wy * y + wz * k[i]!;
    out.wheel[3 + i] = row[SIDE.pinCos]! * y - row[SIDE.pinSin]! * k[i]!;
  }
  return Border.Bounded;
}
