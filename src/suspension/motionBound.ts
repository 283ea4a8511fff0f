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
  const k = [pose[18]!, pose[19]!, pose[20]!] as const;
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
  const vl = [0, 1, 2].map(
    (i) => cosArm * side[SIDE.lowerQuarter + i]! - sinArm * side[SIDE.lowerRadial + i]!,
  );

  // Upper ball joint: rate = (k·vl)/(k·t), t the tangent of its circle.
  const t = tangentOf(side, pose);
  const lift = k[0] * vl[0]! + k[1] * vl[1]! + k[2] * vl[2]!;
  const grip = k[0] * t[0]! + k[1] * t[1]! + k[2] * t[2]!;
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
  const vSpread = [0, 1, 2].map((i) => upperRate * t[i]! - vl[i]!);
  // ω across the steering axis = k × (vu − vl) / span.
  const acrossOff = (vuOff + lowerOff + kOff * norm(vSpread[0]!, vSpread[1]!, vSpread[2]!)) / span;
  const across = [0, 1, 2].map((i) => {
    const j = (i + 1) % 3;
    const m = (i + 2) % 3;
    return (k[j]! * vSpread[m]! - k[m]! * vSpread[j]!) / span;
  });
  const acrossMost = norm(across[0]!, across[1]!, across[2]!) + acrossOff;

  // Outer tie rod end: spin = −rod·(vl + across × o)/lever for the arm, rod·vInner/lever for the steering.
  const o = [0, 1, 2].map((i) => pose[POSE.tieRodOuter + i]! - pose[i]!);
  const rod = [0, 1, 2].map((i) => pose[POSE.tieRodOuter + i]! - pose[POSE.tieRodInner + i]!);
  const armLength = norm(o[0]!, o[1]!, o[2]!);
  const rodLength = side[SIDE.tieRodLength]!;
  const swing = cross3(k, o);
  const swingSize = norm(swing[0]!, swing[1]!, swing[2]!);
  const lever = rod[0]! * swing[0]! + rod[1]! * swing[1]! + rod[2]! * swing[2]!;
  const carried = cross3(across, o);
  const vo = [0, 1, 2].map((i) => vl[i]! + carried[i]!);
  const voSize = norm(vo[0]!, vo[1]!, vo[2]!);
  const armPull = -(rod[0]! * vo[0]! + rod[1]! * vo[1]! + rod[2]! * vo[2]!);
  const steerPull = rod[0]! * innerRate[0] + rod[1]! * innerRate[1] + rod[2]! * innerRate[2];
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
    const voOff = lowerOff + acrossOff * armLength + norm(across[0]!, across[1]!, across[2]!) * oOff;
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

function cross3(a: ArrayLike<number>, b: ArrayLike<number>): [number, number, number] {
  return [a[1]! * b[2]! - a[2]! * b[1]!, a[2]! * b[0]! - a[0]! * b[2]!, a[0]! * b[1]! - a[1]! * b[0]!];
}

/** Tangent of the upper arm's circle at the ball joint of a pose: one radian's motion, mm. */
function tangentOf(side: Float64Array, pose: Float64Array): [number, number, number] {
  let c = 0;
  let s = 0;
  let rSq = 0;
  for (let i = 0; i < 3; i++) {
    const r = pose[POSE.upperBallJoint + i]! - side[SIDE.upperFoot + i]!;
    c += r * side[SIDE.upperRadial + i]!;
    s += r * side[SIDE.upperQuarter + i]!;
    rSq += side[SIDE.upperRadial + i]! ** 2;
  }
  return [0, 1, 2].map((i) => (c * side[SIDE.upperQuarter + i]! - s * side[SIDE.upperRadial + i]!) / rSq) as [
    number,
    number,
    number,
  ];
}
