import { degFromRad, radFromDeg } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { finestLength } from "./lengths.ts";

/** Toward the smaller number, or toward the greater one: whichever never tells more room than was proven. */
export type SafeWay = "down" | "up";

/** mm or degrees within which a number is on a step: what the searches for limits are off by, and rounding. */
const SAME_STEP = 0.003;

/** Percent: rounding alone. A hundredth of a percent past a steering stop is past it. */
const SAME_PERCENT = 1e-6;

/**
 * A number put on whole steps on the safe side: where limits are told, nearest is not good enough, since "goes down
 * to 3 1/4" must not be said of a truck that rubs at 3 1/4.
 */
export function onSafeSide(value: number, step: number, way: SafeWay, same = SAME_STEP): number {
  const steps = value / step;
  const near = Math.round(steps);
  const whole =
    Math.abs(value - near * step) <= same ? near : way === "down" ? Math.floor(steps) : Math.ceil(steps);
  return whole * step + 0;
}

/** A length, mm, on the steps of a format, on the safe side. */
export function safeLength(mm: number, way: SafeWay, format: LengthFormat): number {
  return onSafeSide(mm, finestLength(format), way);
}

/** An angle, rad, on steps of a tenth of a degree (below 10°) or of a degree, on the safe side. */
export function safeAngle(rad: number, way: SafeWay): number {
  return radFromDeg(onSafeSide(degFromRad(rad), 10 ** -steerDecimals(rad), way));
}

/** How many digits a steered angle is told with: one everywhere, so that one angle is never spelled in two ways. */
export function steerDecimals(rad: number): 0 | 1 {
  return Math.abs(rad) < radFromDeg(10) ? 1 : 0;
}

/** A share of full lock in whole percent on the safe side, without its sign: `81%`. */
export function safePercent(steer: number): number {
  return onSafeSide(100 * Math.abs(steer), 1, "down", SAME_PERCENT);
}
