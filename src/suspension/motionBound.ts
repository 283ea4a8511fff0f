import { MOTION } from "../geometry/motionRow.ts";
import { POSE } from "./poseRow.ts";
import { SIDE } from "./sideRow.ts";
import { MOTION_SLACK } from "./tolerances.ts";
import { RATE } from "./wheelRates.ts";

/** How the inner tie rod end may move over a range of steer: `Steering.innerEndSpreadTo` fills it. */
export interface InnerEndSpread {
  /** Greatest speed over the range, mm per unit of steer. */
  speedMost: number;
  /** Greatest difference of its velocity from the middle's, mm per unit of steer. */
  velocityOff: number;
}

// Leaf scratch.
const tangent = new Float64Array(3);

/** Tries at guessing a ball that holds the joint over the whole cell before the cell is called unproven. */
const MOST_TRIES = 8;

/**
 * Proves how the wheel can move over a cell of lower arm angle × steer about its middle pose, and fills a
 * `MOTION` row with the wheel center as reference. Every quantity is a middle value with a radius ("ball
 * arithmetic"): |a·b − a₀·b₀| ≤ |a|·r_b + |b₀|·r_a, and lengths the linkage keeps (arms, span, tie rod,
 * steering arm) are exact. Where a radius depends on itself (a joint's ball on its speed, its speed on its
 * ball), a ball is guessed and verified: the path cannot leave the ball if speed × half range stays below
 * its radius, which also proves that the pose exists all over the cell. Derivation in
 * `public/docs/certified-gaps.md`.
 *
 * @param pose, rates the middle pose and its derivatives (`poseRowTo`, `wheelRatesTo`).
 * @returns false when nothing is proven (cell too large or at the border of reach): split it.
 */
export function motionBoundTo(
  out: Float64Array,
  side: Float64Array,
  pose: Float64Array,
  rates: Float64Array,
  cosArm: number,
  sinArm: number,
  armHalf: number,
  steerHalf: number,
  inner: InnerEndSpread,
  innerRate: readonly [number, number, number],
): boolean {
  const span = side[SIDE.span]!;
  // Plain numbers throughout: searches ask this of every cell, and lists would be most of what it costs.
  const kx = pose[18]!;
  const ky = pose[19]!;
  const kz = pose[20]!;
  const lowerRadius = norm(
    side[SIDE.lowerQuarter]!,
    side[SIDE.lowerQuarter + 1]!,
    side[SIDE.lowerQuarter + 2]!,
  );
  const upperRadius = norm(
    side[SIDE.upperQuarter]!,
    side[SIDE.upperQuarter + 1]!,
    side[SIDE.upperQuarter + 2]!,
  );

  // Lower ball joint: a known circle, so its ball and its velocity's ball are plain arcs.
  const lowerOff = lowerRadius * armHalf;
  const vlx = cosArm * side[SIDE.lowerQuarter]! - sinArm * side[SIDE.lowerRadial]!;
  const vly = cosArm * side[SIDE.lowerQuarter + 1]! - sinArm * side[SIDE.lowerRadial + 1]!;
  const vlz = cosArm * side[SIDE.lowerQuarter + 2]! - sinArm * side[SIDE.lowerRadial + 2]!;

  // Upper ball joint: rate = (k·vl)/(k·t), t the tangent of its circle.
  tangentTo(tangent, side, pose);
  const tx = tangent[0]!;
  const ty = tangent[1]!;
  const tz = tangent[2]!;
  const lift = kx * vlx + ky * vly + kz * vlz;
  const grip = kx * tx + ky * ty + kz * tz;
  const upperRate = lift / grip;
  let upperOff = 1.25 * upperRadius * Math.abs(upperRate) * armHalf;
  let kOff = 0;
  let upperRateOff = 0;
  let proven = armHalf === 0;
  if (proven) upperOff = 0;
  for (let i = 0; i < MOST_TRIES && !proven; i++) {
    kOff = (upperOff + lowerOff) / span;
    const liftOff = lowerOff + kOff * lowerRadius;
    const gripOff = upperOff + kOff * upperRadius;
    const gripLeast = Math.abs(grip) - gripOff;
    if (!(gripLeast > 0)) return false;
    upperRateOff = (liftOff + Math.abs(upperRate) * gripOff) / gripLeast;
    const path = upperRadius * (Math.abs(upperRate) + upperRateOff) * armHalf;
    proven = path <= upperOff;
    if (!proven) upperOff = 1.25 * path;
  }
  if (!proven) return false;
  const vuOff = Math.abs(upperRate) * upperOff + upperRadius * upperRateOff;
  const sx = upperRate * tx - vlx;
  const sy = upperRate * ty - vly;
  const sz = upperRate * tz - vlz;
  // ω across the steering axis = k × (vu − vl) / span.
  const acrossOff = (vuOff + lowerOff + kOff * norm(sx, sy, sz)) / span;
  const ax = (ky * sz - kz * sy) / span;
  const ay = (kz * sx - kx * sz) / span;
  const az = (kx * sy - ky * sx) / span;
  const acrossSize = norm(ax, ay, az);
  const acrossMost = acrossSize + acrossOff;

  // Outer tie rod end: spin = −rod·(vl + across × o)/lever for the arm, rod·vInner/lever for the steering.
  const ox = pose[POSE.tieRodOuter]! - pose[0]!;
  const oy = pose[POSE.tieRodOuter + 1]! - pose[1]!;
  const oz = pose[POSE.tieRodOuter + 2]! - pose[2]!;
  const rx = pose[POSE.tieRodOuter]! - pose[POSE.tieRodInner]!;
  const ry = pose[POSE.tieRodOuter + 1]! - pose[POSE.tieRodInner + 1]!;
  const rz = pose[POSE.tieRodOuter + 2]! - pose[POSE.tieRodInner + 2]!;
  const armLength = norm(ox, oy, oz);
  const rodLength = side[SIDE.tieRodLength]!;
  const wx = ky * oz - kz * oy;
  const wy = kz * ox - kx * oz;
  const wz = kx * oy - ky * ox;
  const swingSize = norm(wx, wy, wz);
  const lever = rx * wx + ry * wy + rz * wz;
  const vox = vlx + (ay * oz - az * oy);
  const voy = vly + (az * ox - ax * oz);
  const voz = vlz + (ax * oy - ay * ox);
  const voSize = norm(vox, voy, voz);
  const armPull = -(rx * vox + ry * voy + rz * voz);
  const steerPull = rx * innerRate[0] + ry * innerRate[1] + rz * innerRate[2];
  const innerSpeed = norm(innerRate[0], innerRate[1], innerRate[2]);
  const armSpin = armPull / lever;
  const steerSpin = steerPull / lever;
  const innerOff = inner.speedMost * steerHalf;
  let outerOff =
    1.25 * (armHalf * (voSize + Math.abs(armSpin) * swingSize) + steerHalf * Math.abs(steerSpin) * swingSize);
  let armSpinOff = 0;
  let steerSpinOff = 0;
  proven = false;
  for (let i = 0; i < MOST_TRIES && !proven; i++) {
    const oOff = outerOff + lowerOff;
    const rodOff = outerOff + innerOff;
    const swingOff = kOff * armLength + oOff;
    const leverOff = rodLength * swingOff + swingSize * rodOff;
    const leverLeast = Math.abs(lever) - leverOff;
    if (!(leverLeast > 0)) return false;
    const voOff = lowerOff + acrossOff * armLength + acrossSize * oOff;
    armSpinOff = (rodLength * voOff + voSize * rodOff + Math.abs(armSpin) * leverOff) / leverLeast;
    steerSpinOff =
      (rodLength * inner.velocityOff + innerSpeed * rodOff + Math.abs(steerSpin) * leverOff) / leverLeast;
    const swingMost = Math.min(armLength, swingSize + swingOff);
    const path =
      armHalf * (lowerRadius + acrossMost * armLength + (Math.abs(armSpin) + armSpinOff) * swingMost) +
      steerHalf * (Math.abs(steerSpin) + steerSpinOff) * swingMost;
    proven = path <= outerOff;
    if (!proven) outerOff = 1.25 * path;
  }
  if (!proven) return false;

  const armTurnOff = acrossOff + armSpinOff + Math.abs(armSpin) * kOff;
  const steerTurnOff = steerSpinOff + Math.abs(steerSpin) * kOff;
  const armTurn = norm(rates[RATE.armTurn]!, rates[RATE.armTurn + 1]!, rates[RATE.armTurn + 2]!);
  const steerTurn = norm(rates[RATE.steerTurn]!, rates[RATE.steerTurn + 1]!, rates[RATE.steerTurn + 2]!);
  const toCenter = norm(
    pose[POSE.wheelCenter]! - pose[0]!,
    pose[POSE.wheelCenter + 1]! - pose[1]!,
    pose[POSE.wheelCenter + 2]! - pose[2]!,
  );
  out[MOTION.armHalf] = armHalf;
  out[MOTION.steerHalf] = steerHalf;
  for (let i = 0; i < 12; i++) out[MOTION.armTurn + i] = rates[i]!;
  const armTurnMost = (armTurn + armTurnOff) * MOTION_SLACK;
  const steerTurnMost = (steerTurn + steerTurnOff) * MOTION_SLACK;
  out[MOTION.armTurnOff] = armTurnOff * MOTION_SLACK;
  out[MOTION.steerTurnOff] = steerTurnOff * MOTION_SLACK;
  out[MOTION.armTurnMost] = armTurnMost;
  out[MOTION.steerTurnMost] = steerTurnMost;
  // Velocity of the body point passing the middle wheel center: vl + ω × (center − lower joint).
  out[MOTION.armSlideOff] = (lowerOff + toCenter * armTurnOff + armTurnMost * lowerOff) * MOTION_SLACK;
  out[MOTION.steerSlideOff] = (toCenter * steerTurnOff + steerTurnMost * lowerOff) * MOTION_SLACK;
  return true;
}

function norm(x: number, y: number, z: number): number {
  return Math.sqrt(x * x + y * y + z * z);
}

/** Tangent of the upper arm's circle at the ball joint of a pose: one radian's motion, mm. */
function tangentTo(out: Float64Array, side: Float64Array, pose: Float64Array): void {
  let c = 0;
  let s = 0;
  let rSq = 0;
  for (let i = 0; i < 3; i++) {
    const r = pose[POSE.upperBallJoint + i]! - side[SIDE.upperFoot + i]!;
    c += r * side[SIDE.upperRadial + i]!;
    s += r * side[SIDE.upperQuarter + i]!;
    rSq += side[SIDE.upperRadial + i]! ** 2;
  }
  for (let i = 0; i < 3; i++)
    out[i] = (c * side[SIDE.upperQuarter + i]! - s * side[SIDE.upperRadial + i]!) / rSq;
}
