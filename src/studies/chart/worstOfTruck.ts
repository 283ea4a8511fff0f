import { DEPTH_SHARE, GAP_TOLERANCE, SOLID_TOLERANCE } from "../../gaps/cells/tolerances.ts";
import { GAP, GAP_ROW } from "../../gaps/partGap.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import { type Pair, pairGapTo, type TogetherPair } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { DEFAULT_TOLERANCE, ownPairs, type Verdict } from "../reports/check.ts";
import { type CheckEntry, entryOf, searchPairBelow } from "../reports/pairSearch.ts";
import type { SideRange } from "../search/sideRange.ts";
import { TriedPose } from "../search/triedPose.ts";
import { type PoseHints, pairKey } from "./poseHints.ts";

/** The worst gap of a whole truck over its poses; mm. */
export interface WorstOfTruck {
  /** Null where no pair has a pose. */
  readonly entry: CheckEntry | null;
  /** No gap of any pair is below it; null where a rub was found and that was all that was asked. */
  readonly bound: number | null;
}

type Ranges = Readonly<Record<Side, SideRange>>;

type MovingPair = Exclude<Pair, TogetherPair>;

/** A pair with the worst gap known so far. */
interface Seen {
  readonly pair: MovingPair;
  readonly gap: number;
  readonly arm: number;
  readonly steer: number;
}

/** mm. A rub this deep is one however a search tells it: no check leaves more between what it finds and what is there. */
const SURE_RUB = 1.5 * DEFAULT_TOLERANCE;

/**
 * The worst gap of all pairs together. Each pair is looked at where a truck alike came near, and only what is below the worst of
 * these is searched for: most pairs end with one bound. A rub that is no matter of tolerance ends it at once.
 * @param hints of a truck with the same pairs; they change what it costs, and of a rub which pose is told
 */
export function worstOfTruck(model: Model, ranges: Ranges, hints: PoseHints, budget: Budget): WorstOfTruck {
  const own = ownPairs(model);
  const moving = own
    .flatMap((pair) => (pair.kind === "together" ? [] : [seenPair(pair, ranges[pair.side], hints)]))
    .sort((a, b) => a.gap - b.gap);
  const [first] = moving;
  let best = first?.gap ?? Number.POSITIVE_INFINITY;
  let entry = best < Number.POSITIVE_INFINITY ? entryAt(model, first!, ranges) : null;
  if (best < -SURE_RUB) return { entry, bound: null };
  let bound = Number.POSITIVE_INFINITY;
  for (const pair of own) {
    if (pair.kind !== "together") continue;
    if (!pair.isBelow(best)) {
      bound = Math.min(bound, best - GAP_TOLERANCE);
      continue;
    }
    best = pair.row[GAP.gap]!;
    bound = Math.min(bound, best - (best < 0 ? SOLID_TOLERANCE - DEPTH_SHARE * best : GAP_TOLERANCE));
    entry = entryTogether(model, pair, ranges);
    if (best < -SURE_RUB) return { entry, bound: null };
  }
  for (const { pair } of moving) {
    const found = searchPairBelow(model, pair, ranges[pair.side], best, DEFAULT_TOLERANCE, budget);
    bound = Math.min(bound, found.bound);
    if (found.entry === null || !(found.entry.gap < best)) continue;
    entry = found.entry;
    best = entry.gap;
    if (best < -SURE_RUB) return { entry, bound: null };
  }
  return { entry, bound: Math.min(bound, best) };
}

/** The worst of a pair at the poses hinted at. */
function seenPair(pair: MovingPair, range: SideRange, hints: PoseHints): Seen {
  let seen: Seen = { pair, gap: Number.POSITIVE_INFINITY, arm: 0, steer: 0 };
  const tried = new TriedPose(range.wheel, range);
  const row = new Float64Array(GAP_ROW);
  for (const hint of hints.get(pairKey(pair)) ?? []) {
    const arm = Math.min(range.armLow + hint.armShare * (range.armHigh - range.armLow), range.armHigh);
    if (!tried.stands(arm, hint.steer)) continue;
    const gap = pairGapTo(row, 0, pair, tried.row, 0, seen.gap);
    if (gap < seen.gap && tried.keeps(arm, hint.steer)) seen = { pair, gap, arm, steer: hint.steer };
  }
  return seen;
}

function entryAt(model: Model, { pair, gap, arm, steer }: Seen, ranges: Ranges): CheckEntry {
  return entryOf(model, pair, ranges[pair.side], { bound: gap, armAngle: arm, steer }, DEFAULT_TOLERANCE);
}

function entryTogether(model: Model, pair: TogetherPair, ranges: Ranges): CheckEntry {
  const found = { bound: pair.row[GAP.gap]!, armAngle: 0, steer: 0 };
  const entry = entryOf(model, pair, ranges[pair.side], found, DEFAULT_TOLERANCE);
  return { ...entry, travel: 0, steer: 0, together: true };
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
