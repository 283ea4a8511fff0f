import type { Setup } from "../../setup/types/types.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { type LowestTravels, lowestTravels } from "./lowestTravels.ts";
import { type NoLimits, type SteerLimits, steerLimits } from "./steerLimits.ts";

/** How far a truck steers at its stances and at both ends of its travel, and how low it goes at each full lock. */
export interface WayEnds {
  /** In the order of `endsTravels`. */
  readonly steering: readonly (SteerLimits | NoLimits)[];
  /** At full left lock, at full right lock. */
  readonly lowering: readonly (LowestTravels | NoLimits)[];
}

/** Heights told: full bump, the stances between, full droop, lowest truck first; mm of travel. */
export function endsTravels({ travel, stances }: Setup): readonly number[] {
  const all = new Set([travel.droop, ...stances.map((stance) => stance.travel), travel.bump]);
  return [...all].sort((a, b) => b - a);
}

export function wayEnds(model: Model, budget: Budget): WayEnds {
  const steering = steerLimits(model, endsTravels(model.setup), budget.share(2));
  return { steering, lowering: lowestTravels(model, [1, -1], budget.share(1)) };
}
