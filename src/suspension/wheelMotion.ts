import { addScaled, cross, dot, scale, type Vec3, vecAt } from "../geometry/vec.ts";
import { armAngleFor, travelStatus } from "./armAngle.ts";
import type { FrontEnd, Side } from "./frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { SIDE } from "./sideRow.ts";
import { INNER_ENDS_ROW } from "./steering.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "./wheelRates.ts";

/**
 * How one wheel moves at a pose: exact first derivatives of the linkage, in the side's left-hand frame (the right side
 * mirrored), mm and radians. The turn of the wheel about its own axis is not counted: it is free to roll.
 */
export interface WheelMotion {
  readonly contactPatch: Vec3;
  /** Velocity of the contact patch (the ISO 8855 contact center of each pose) per mm of travel, steering held. */
  readonly contactVelocity: Vec3;
  /** Angular velocity of the wheel, without its spin, rad per mm of travel, steering held. */
  readonly turn: Vec3;
  /** Camber per mm of travel, rad/mm. */
  readonly camberGain: number;
  /** Toe per mm of travel, rad/mm: the slope of the bump steer curve. */
  readonly toeGain: number;
  /** How fast the wheel turns about Z, + = toe-out, per unit of steer, travel held, rad. */
  readonly turnPerSteer: number;
}

/**
 * The motion of one wheel at a travel (mm) and steer. Travel moves the lower arm with the steering held where it is;
 * steer turns the knuckle with the lower arm held.
 * @returns null where the pose is out of reach, or at the border itself, where the wheel moves infinitely fast.
 */
export function wheelMotion(
  frontEnd: FrontEnd,
  side: Side,
  travel: number,
  steer: number,
): WheelMotion | null {
  const found = ratesAt(frontEnd, side, travel, steer);
  if (found === null) return null;
  const { pose, rates, rise } = found;
  const axis = vecAt(pose, POSE.wheelAxis);
  const carrierTurn = scale(vecAt(rates, RATE.armTurn), 1 / rise);
  const axisRate = cross(carrierTurn, axis);
  const centerRate = scale(vecAt(rates, RATE.armSlide), 1 / rise);
  const radius = frontEnd[side].row[SIDE.loadedRadius]!;
  const motion: WheelMotion = {
    contactPatch: vecAt(pose, POSE.contactPatch),
    contactVelocity: contactRate(axis, axisRate, centerRate, radius),
    turn: addScaled(carrierTurn, axis, -dot(carrierTurn, axis)),
    camberGain: -axisRate[2] / Math.sqrt(axis[0] ** 2 + axis[1] ** 2),
    toeGain: headingRate(axis, axisRate),
    turnPerSteer: -headingRate(axis, cross(vecAt(rates, RATE.steerTurn), axis)),
  };
  return Number.isFinite(motion.camberGain) && Number.isFinite(motion.turnPerSteer) ? motion : null;
}

/** d atan2(n_x, n_y): how fast a left wheel toes in. */
function headingRate(n: Vec3, rate: Vec3): number {
  return (rate[0] * n[1] - n[0] * rate[1]) / (n[0] ** 2 + n[1] ** 2);
}

/** The rate of center + radius · down, with down = (n_z n − Z) / √(1 − n_z²), straight down in the wheel plane. */
function contactRate(n: Vec3, rate: Vec3, centerRate: Vec3, radius: number): Vec3 {
  const level = Math.sqrt(n[0] ** 2 + n[1] ** 2);
  const levelRate = (n[0] * rate[0] + n[1] * rate[1]) / level;
  const along = (i: 0 | 1 | 2) => {
    const down = n[2] * n[i] - (i === 2 ? 1 : 0);
    const downRate = rate[2] * n[i] + n[2] * rate[i];
    return centerRate[i] + (radius * (downRate * level - down * levelRate)) / level ** 2;
  };
  return [along(0), along(1), along(2)];
}

/** A pose of one side with its exact first derivatives; rows as `POSE` and `RATE`, left-hand frame. */
interface RatesAt {
  readonly pose: Float64Array;
  /** Per radian of lower arm, steering held, and per unit of steer, arm held. */
  readonly rates: Float64Array;
  /** mm of travel per radian of lower arm: travel is measured straight ahead, so this is the straight-ahead pose's. */
  readonly rise: number;
}

/** One side at a travel (mm) and steer. @returns null where the pose is out of reach */
export function ratesAt(frontEnd: FrontEnd, side: Side, travel: number, steer: number): RatesAt | null {
  const model = frontEnd[side];
  if (travelStatus(model, travel) !== PoseStatus.Ok) return null;
  const ends = new Float64Array(INNER_ENDS_ROW);
  if (frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return null;
  const angle = armAngleFor(model, travel);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const pose = new Float64Array(POSE_ROW);
  const rates = new Float64Array(RATE_ROW);
  if (poseRowTo(pose, 0, model.row, cos, sin, ...model.innerAtRest) !== PoseStatus.Ok) return null;
  wheelRatesTo(rates, 0, model.row, pose, 0, cos, sin);
  const rise = rates[RATE.armSlide + 2]!;
  const at = side === "left" ? 0 : 3;
  if (poseRowTo(pose, 0, model.row, cos, sin, ...vecAt(ends, at)) !== PoseStatus.Ok) return null;
  wheelRatesTo(rates, 0, model.row, pose, 0, cos, sin, ...vecAt(ends, at + 6));
  return { pose, rates, rise };
}
