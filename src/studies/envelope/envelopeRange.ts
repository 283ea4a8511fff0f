import type { Model } from "../model/model.ts";

/** The poses an envelope is swept over: travel in mm (+ = bump), steer −1 … +1; low = high is one value. */
export interface EnvelopeRange {
  readonly travelLow: number;
  readonly travelHigh: number;
  readonly steerLow: number;
  readonly steerHigh: number;
}

/** All travel × all steer. */
export function wholeRange({ setup }: Model): EnvelopeRange {
  return { travelLow: setup.travel.droop, travelHigh: setup.travel.bump, steerLow: -1, steerHigh: 1 };
}

/** One height, mm of travel, lock to lock. */
export function stanceRange(travel: number): EnvelopeRange {
  return { travelLow: travel, travelHigh: travel, steerLow: -1, steerHigh: 1 };
}

/** All travel with the steering straight ahead. */
export function straightRange({ setup }: Model): EnvelopeRange {
  return { travelLow: setup.travel.droop, travelHigh: setup.travel.bump, steerLow: 0, steerHigh: 0 };
}

/** The travel of a range that both wheels can follow with the steering straight ahead, or null when none. */
export function reachableTravel(
  { frontEnd: { left, right } }: Model,
  range: EnvelopeRange,
): { readonly low: number; readonly high: number } | null {
  const low = Math.max(range.travelLow, left.reach.droop.travel, right.reach.droop.travel);
  const high = Math.min(range.travelHigh, left.reach.bump.travel, right.reach.bump.travel);
  return low <= high ? { low, high } : null;
}
