import { DEPTH_SHARE, GAP_TOLERANCE, SOLID_TOLERANCE } from "../../gaps/cells/tolerances.ts";
import type { Model } from "../model/model.ts";
import type { Pair } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { DEFAULT_TOLERANCE, ownPairs, type Verdict } from "../reports/check.ts";
import { type CheckEntry, entryOf, searchPairBelow } from "../reports/pairSearch.ts";
import type { PoseHints } from "./poseHints.ts";
import { deepestNear, type Ranges, type Seen, seenGap } from "./seenGap.ts";

/** The worst gap of a whole truck over its poses; mm. */
export interface WorstOfTruck {
  /** Null where no pair has a pose. */
  readonly entry: WorstEntry | null;
  /** No gap of any pair is below it; null where a rub was found and that was all that was asked. */
  readonly bound: number | null;
}

/** What decides, and where: a check's entry in short. */
export type WorstEntry = Pick<CheckEntry, "part" | "side" | "gap" | "travel" | "steer" | "together">;

/** mm. A rub this deep is one however a search tells it: no check leaves more between what it finds and what is there. */
const SURE_RUB = 1.5 * DEFAULT_TOLERANCE;

/** mm. How much too large the gap of what rides together may be told: many places of a barrel are as near but for microns. */
const RIDE_TOLERANCE = 0.02;

/**
 * The worst gap of all pairs together. Each pair is looked at where a truck alike came near, and only what is below the worst of
 * these is searched for: most pairs end with one bound. A rub that is no matter of tolerance ends it at once.
 * @param hints of a truck with the same pairs; they change what it costs, and of a rub which pose is told
 */
export function worstOfTruck(
  model: Model,
  ranges: Ranges,
  hints: PoseHints,
  carried: (pair: Pair, needed: number) => number,
  budget: Budget,
): WorstOfTruck {
  const own = ownPairs(model);
  const moving = own
    .flatMap((pair) => (pair.kind === "together" ? [] : [seenGap(pair, ranges[pair.side], hints)]))
    .sort((a, b) => a.gap - b.gap);
  const [first] = moving;
  let best = first?.gap ?? Number.POSITIVE_INFINITY;
  // A rub for certain needs no search, but a look about how deep it gets.
  if (best < -SURE_RUB)
    return { entry: entryAt(model, deepestNear(first!, ranges[first!.pair.side]), ranges), bound: null };
  let entry: WorstEntry | null = best < Number.POSITIVE_INFINITY ? entryAt(model, first!, ranges) : null;
  let bound = Number.POSITIVE_INFINITY;
  for (const pair of own) {
    if (pair.kind !== "together") continue;
    const known = carried(pair, best);
    if (known >= best) {
      bound = Math.min(bound, known);
      continue;
    }
    const gap = pair.roughGap(best, RIDE_TOLERANCE);
    bound = Math.min(
      bound,
      gap - RIDE_TOLERANCE - (gap < 0 ? SOLID_TOLERANCE - DEPTH_SHARE * gap : GAP_TOLERANCE),
    );
    if (!(gap < best)) continue;
    best = gap;
    entry = { part: pair.name, side: pair.side, gap, travel: 0, steer: 0, together: true };
    if (best < -SURE_RUB) return { entry, bound: null };
  }
  for (const { pair } of moving) {
    const known = carried(pair, best);
    if (known >= best) {
      bound = Math.min(bound, known);
      continue;
    }
    const found = searchPairBelow(model, pair, ranges[pair.side], best, DEFAULT_TOLERANCE, budget);
    bound = Math.min(bound, found.bound);
    if (found.entry === null || !(found.entry.gap < best)) continue;
    entry = found.entry;
    best = entry.gap;
    if (best < -SURE_RUB) return { entry, bound: null };
  }
  return { entry, bound: Math.min(bound, best) };
}

function entryAt(model: Model, { pair, gap, arm, steer }: Seen, ranges: Ranges): CheckEntry {
  return entryOf(model, pair, ranges[pair.side], { bound: gap, armAngle: arm, steer }, DEFAULT_TOLERANCE);
}

/** What a check is sure to say too; null = only the check itself can tell. @param allowance mm */
export function sureVerdict({ entry, bound }: WorstOfTruck, allowance: number): Verdict | null {
  if (entry === null) return "clear";
  const { gap } = entry;
  if (gap < -SURE_RUB) return "rubs";
  if (bound === null || bound < 0) return null;
  // At the border of reach a check leaves its tolerance open.
  if (bound >= allowance + DEFAULT_TOLERANCE) return "clear";
  return gap < allowance - SURE_RUB ? "close" : null;
}
