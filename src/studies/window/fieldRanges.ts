import { armAngleFor } from "../../suspension/armAngle.ts";
import type { FrontEnd, Side, SideModel } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";

/** Lower arm angles, rad. */
export interface ArmRange {
  readonly low: number;
  readonly high: number;
}

/** Of one truck: the arm angles of its travel, and those between its droop strap and bump stop; each wheel's. */
export interface TravelArms {
  readonly travel: Readonly<Record<Side, ArmRange>>;
  readonly stops: Readonly<Record<Side, ArmRange>>;
}

/** rad. Rounding of an arm angle found for a travel. */
const ROUNDING = 1e-9;

const SIDES = ["left", "right"] as const;

export function travelArms(model: Model, aloneSides: boolean): TravelArms {
  const { limits } = model.setup;
  const of = (side: Side) => {
    const { low, high } = limitTravel(model, aloneSides ? side : null);
    const wheel = model.frontEnd[side];
    const arms = { low: armAngleFor(wheel, low), high: armAngleFor(wheel, high) };
    // A stop outside the travel stops nothing.
    const strap = limits?.droopStrap ?? Number.NEGATIVE_INFINITY;
    const stop = limits?.bumpStop ?? Number.POSITIVE_INFINITY;
    return {
      arms,
      stops: {
        low: strap > low ? armAngleFor(wheel, strap) : arms.low,
        high: stop < high ? armAngleFor(wheel, stop) : arms.high,
      },
    };
  };
  const [left, right] = [of("left"), of("right")];
  return {
    travel: { left: left.arms, right: right.arms },
    stops: { left: left.stops, right: right.stops },
  };
}

/**
 * The truck with travel and stops so wide that every pose of the trucks at both ends of a stretch of the field counts, and with
 * them those of every truck between: at one arm angle the travel changes evenly with the field. Null where this truck's own
 * reach ends before.
 */
export function withTravelOf(model: Model, a: TravelArms, b: TravelArms): Model | null {
  const { travel, limits } = model.setup;
  let [droop, bump, strap, stop] = [
    travel.droop,
    travel.bump,
    limits?.droopStrap ?? null,
    limits?.bumpStop ?? null,
  ];
  for (const side of SIDES) {
    const wheel = model.frontEnd[side];
    for (const { travel: arms, stops } of [a, b]) {
      const [low, high] = [travelAt(wheel, arms[side].low), travelAt(wheel, arms[side].high)];
      if (!(low <= 0 && high >= 0)) return null;
      droop = Math.min(droop, low);
      bump = Math.max(bump, high);
      if (strap !== null) strap = Math.min(strap, travelAt(wheel, stops[side].low));
      if (stop !== null) stop = Math.max(stop, travelAt(wheel, stops[side].high));
    }
  }
  if (Number.isNaN(droop + bump + (strap ?? 0) + (stop ?? 0))) return null;
  const kept = limits === null ? null : { ...limits, droopStrap: strap, bumpStop: stop };
  return { ...model, setup: { ...model.setup, travel: { droop, bump }, limits: kept } };
}

/** Arm angles that count at both ends of a stretch of the field, so at every value between. */
export function armsOfBoth(a: TravelArms, b: TravelArms, side: Side): ArmRange {
  return {
    low: Math.max(a.travel[side].low, b.travel[side].low, a.stops[side].low, b.stops[side].low),
    high: Math.min(a.travel[side].high, b.travel[side].high, a.stops[side].high, b.stops[side].high),
  };
}

/** Arm angle of the other wheel at the travel of this one's, rad; NaN where either cannot go there straight ahead. */
export function otherArmAt(frontEnd: FrontEnd, side: Side, arm: number): number {
  const travel = travelAt(frontEnd[side], arm);
  return Number.isNaN(travel)
    ? travel
    : armAngleFor(frontEnd[side === "left" ? "right" : "left"], travel, arm);
}

/** mm. NaN where it cannot stand there with the steering straight ahead. */
function travelAt({ row, innerAtRest, centerHeightAtRest, reach }: SideModel, arm: number): number {
  if (!(arm >= reach.droop.armAngle - ROUNDING && arm <= reach.bump.armAngle + ROUNDING)) return Number.NaN;
  if (arm === 0) return 0;
  const clamped = Math.min(Math.max(arm, reach.droop.armAngle), reach.bump.armAngle);
  const pose = new Float64Array(POSE_ROW);
  const [x, y, z] = innerAtRest;
  const status = poseRowTo(pose, 0, row, Math.cos(clamped), Math.sin(clamped), x, y, z);
  return status === PoseStatus.Ok ? pose[POSE.wheelCenter + 2]! - centerHeightAtRest : Number.NaN;
}
