import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { KeptPoses, type PassedLimit } from "../limits/keptPoses.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import { OtherWheel } from "./otherWheel.ts";
import { PoseCells, type PoseRange, type WheelToMove } from "./poseCells.ts";
import type { PoseToStart } from "./triedPose.ts";

/** One side's poses to be searched. */
export interface SideRange extends PoseRange {
  /** Its limits: none when no limit is passed anywhere, or when no pose looked at keeps them all. */
  readonly wheel: WheelToMove;
  /** Travel, mm. */
  readonly low: number;
  readonly high: number;
  /** A pose that keeps all limits, where there are limits. */
  readonly start: PoseToStart | null;
}

/** The part of a setup's heights and steering that is asked about. */
export interface AskedPoses {
  /** Travel, mm; null = the setup's. */
  readonly travel: { readonly low: number; readonly high: number } | null;
  /** Share of full lock either way, more than 0 and at most 1. */
  readonly lock: number;
}

/** A truck's own heights, both locks. */
export const ALL_POSES: AskedPoses = { travel: null, lock: 1 };

/** The truck as if its travel were what is asked about; stops and limits stay where they are. */
export function withAskedTravel(model: Model, { travel }: AskedPoses): Model {
  if (travel === null) return model;
  return { ...model, setup: { ...model.setup, travel: { droop: travel.low, bump: travel.high } } };
}

/**
 * The poses to be searched of each side: both locks, and the travel that the setup asks for as far as both wheels, or
 * this one alone, can follow it with the steering straight ahead; less the poses that pass one of these limits.
 * @param passed limits that some pose passes. @param lock share of full lock either way
 * @param otherWheel asked at each pose, or first whether it is proven to stand at all of them, which saves
 *   a long search more than it takes
 */
export function rangesOf(
  model: Model,
  passed: readonly PassedLimit[],
  aloneSides: boolean,
  lock = 1,
  otherWheel: "proven" | "asked" = "proven",
): Readonly<Record<Side, SideRange>> {
  const rangeOf = (side: Side): SideRange => {
    const { frontEnd } = model;
    const { low, high } = limitTravel(model, aloneSides ? side : null);
    const armLow = armAngleFor(frontEnd[side], low);
    const armHigh = armAngleFor(frontEnd[side], high);
    const { mirrored } = model;
    const asked = aloneSides ? null : new OtherWheel(frontEnd, side, mirrored);
    // Where it can stand everywhere it need not be asked.
    const other = otherWheel === "proven" && asked?.standsAllOver(low, high) ? null : asked;
    const innerAt = side === "left" ? 0 : 3;
    const alone: WheelToMove = { side: frontEnd[side], other, innerAt, steering: frontEnd.steering };
    const rangeFor = (wheel: WheelToMove, start: PoseToStart | null): SideRange => ({
      armLow,
      armHigh,
      steerLow: -lock,
      steerHigh: lock,
      wheel: { ...wheel, cells: new PoseCells(wheel) },
      low,
      high,
      start,
    });
    if (!passed.some((limit) => !aloneSides || limit.side === side)) return rangeFor(alone, null);
    const limits = new KeptPoses(model, side, passed, aloneSides);
    const start = limits.start(armLow, armHigh, lock);
    return start === null ? rangeFor(alone, null) : rangeFor({ ...alone, limits }, start);
  };
  // Of mirror images one side is never asked for.
  let left: SideRange | null = null;
  let right: SideRange | null = null;
  return {
    get left() {
      left ??= rangeOf("left");
      return left;
    },
    get right() {
      right ??= rangeOf("right");
      return right;
    },
  };
}
