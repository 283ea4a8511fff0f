import type { Side } from "../../suspension/frontEnd.ts";
import type { PassedLimit } from "../limits/keptPoses.ts";
import { limitsOn } from "../limits/limitsOn.ts";
import { limitsPassed } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import type { SideRange } from "../search/sideRange.ts";
import type { Closer } from "./windowTypes.ts";

/** Names of limits told by travel, which a field that slides the wheel moves. */
const BY_TRAVEL = ["bump stop", "droop strap"];

/**
 * Limits that any pose may pass at any value of a field that leaves the linkage alone: those that no value moves are looked
 * at once, over all poses of `whole`.
 */
export function passedAnywhere(whole: Model, aloneSides: boolean, budget: Budget): readonly PassedLimit[] {
  const { limits, airSpring } = whole.setup;
  if (limits === null && airSpring === null) return [];
  const found = limitsPassed(whole, aloneSides, budget.share(4));
  const byTravel = allLimits(whole).filter(({ name }) => BY_TRAVEL.includes(name));
  return [...found.filter(({ name }) => !BY_TRAVEL.includes(name)), ...byTravel];
}

/** The limit that every pose passes; null = there are poses that keep all. */
export function closingLimit(
  passed: readonly PassedLimit[],
  { left, right }: Readonly<Record<Side, SideRange>>,
): Closer | null {
  if (passed.length === 0 || left.wheel.limits !== undefined || right.wheel.limits !== undefined) return null;
  return { kind: "limit", name: [...new Set(passed.map(({ name }) => name))].join(", ") };
}

/** Every limit the setup gives, of both sides. */
export function allLimits(model: Model): readonly PassedLimit[] {
  const sides = ["left", "right"] as const;
  return sides.flatMap((side) => limitsOn(model, side).map(({ name }) => ({ side, name })));
}
