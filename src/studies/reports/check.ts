import { requirePositive } from "../../geometry/requireFinite.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { isPassed, type LimitOverRange, limitsPassed } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import type { Pair } from "../model/pairs.ts";
import { Budget } from "../numeric/budget.ts";
import {
  ALL_POSES,
  type AskedPoses,
  rangesOf,
  type SideRange,
  withAskedTravel,
} from "../search/sideRange.ts";
import {
  better,
  type CheckEntry,
  DEFAULT_TOLERANCE,
  type KnownPose,
  mirrorEntry,
  searchPair,
  type Verdict,
  withKnown,
} from "./pairSearch.ts";
import { type ReachLimit, reachLimits } from "./reachLimits.ts";

export { type CheckEntry, DEFAULT_TOLERANCE, type KnownPose, type Verdict, verdictOf } from "./pairSearch.ts";

export interface CheckReport {
  readonly verdict: Verdict;
  /** The entry with the smallest gap of all, the deepest rub where some rub: "the worst" everywhere. null when nothing is measured. */
  readonly worst: CheckEntry | null;
  /** Worst of each body part, left side first, in the setup's order; then of what moves, left side first. */
  readonly parts: readonly CheckEntry[];
  /** Where the linkage runs out of reach within the travel and steer asked for. */
  readonly limits: readonly ReachLimit[];
  /** Joints, stops, shocks and air springs past their limits somewhere; only where the setup gives limits. */
  readonly limitsPassed?: readonly LimitOverRange[];
  /**
   * Names of the limits that cut the range: poses that pass one are not counted in `parts`. Only where the setup gives
   * limits; empty when none is passed anywhere, and when every pose passes one: then all poses are counted.
   */
  readonly limitedBy?: readonly string[];
  /** The budget was spent first: the entries' `tolerance` says what was reached. */
  readonly cutShort?: true;
}

export interface CheckOptions {
  /** mm; how far `bound` may stay below `gap`. */
  readonly tolerance?: number;
  /** Once it is spent, the answer is what was reached; without one every search runs to its own end. */
  readonly budget?: Budget;
  /**
   * Each wheel for itself: the other one's reach and limits, at the same height, take no pose away. So it must be where
   * the wheels can stand at unlike heights; default: where the setup rolls the body.
   */
  readonly aloneSides?: boolean;
  /** The heights and the share of lock looked at; default all of both. */
  readonly poses?: AskedPoses;
  /**
   * Poses somebody looks at, or that were bad before: an answer that was cut short is no better than it is at them. A finished one
   * does not depend on them.
   */
  readonly known?: readonly KnownPose[];
}

/** Which of the pairs one of several searchers looks into: every `of`-th, from the `at`-th on. */
export interface ShareOfPairs {
  readonly at: number;
  readonly of: number;
}

/** What one of several searchers found of a check: plain data, put together by `checkOf`. */
export interface CheckShare {
  /** One a pair of the model, in its order; null = it has no pose; undefined = another's, or a mirror image. */
  readonly found: readonly (CheckEntry | null | undefined)[];
  /** Told of the report. */
  readonly range: Pick<CheckReport, "limits" | "limitsPassed" | "limitedBy">;
  readonly isCut: boolean;
}

/** Of the budget a quarter is for the limits: what they leave open only widens the range of poses that bounds cover. */
const LIMITS_PART = 4;

/** Times a pair is searched: what a share of the budget ends may have more once the others are done. */
const ROUNDS = 2;

/**
 * The worst gap of every pair over the setup's travel range and both locks, each with a proven bound; only poses that
 * keep every limit the setup gives are counted, as long as there are such.
 * Vehicle axes, mm.
 * @throws RangeError for a tolerance that is not finite and more than 0
 */
export function checkClearance(model: Model, options: CheckOptions = {}): CheckReport {
  return checkOf(model, [checkShare(model, { at: 0, of: 1 }, options)]);
}

/**
 * The same of some pairs alone: each is searched for itself, so where no budget ends a search the report of all shares is
 * the same however many there are.
 * @throws RangeError for a tolerance that is not finite and more than 0
 */
export function checkShare(whole: Model, { at, of }: ShareOfPairs, options: CheckOptions = {}): CheckShare {
  const { poses = ALL_POSES } = options;
  const model = withAskedTravel(whole, poses);
  const budget = options.budget ?? Budget.endless();
  const tolerance = options.tolerance ?? DEFAULT_TOLERANCE;
  requirePositive("checkClearance", tolerance);
  const limits = reachLimits(model);
  const forLimits = budget.share(LIMITS_PART);
  const { ranges, searched } = rangesToCheck(model, poses, forLimits, options.aloneSides);
  const passed = searched?.filter(isPassed) ?? null;
  const own = ownPairs(model).filter((_, i) => i % of === at);
  const { found, open } = searchPairs(model, own, ranges, tolerance, budget);
  const known = knownOf(model, options.known ?? []);
  for (const pair of open) {
    const entry = found.get(pair) ?? null;
    if (entry !== null) found.set(pair, withKnown(model, pair, ranges[pair.side], entry, known, tolerance));
  }
  return {
    found: model.pairs.map((pair) => found.get(pair)),
    range: {
      limits,
      ...(passed === null ? {} : { limitsPassed: passed, limitedBy: limitedBy(passed, ranges) }),
    },
    isCut: open.length > 0 || forLimits.cut,
  };
}

/**
 * The poses that a check counts, of each side; and the limits that are passed, or may be, null where the setup gives none.
 * @param model with the travel asked about
 */
export function rangesToCheck(
  model: Model,
  { lock }: AskedPoses,
  budget: Budget,
  aloneSides = model.setup.roll !== null,
): {
  readonly ranges: Readonly<Record<Side, SideRange>>;
  readonly searched: readonly LimitOverRange[] | null;
} {
  const searched = limitsToKeep(model, aloneSides, budget);
  return { ranges: rangesOf(model, searched ?? [], aloneSides, lock), searched };
}

/** The report that all shares of a check make together. @param shares every one, at least one */
export function checkOf(model: Model, shares: readonly CheckShare[]): CheckReport {
  const { pairs } = model;
  const foundOf = (pair: Pair): CheckEntry | null => {
    const place = pairs.indexOf(pair);
    return shares.map(({ found }) => found[place]).find((entry) => entry !== undefined) ?? null;
  };
  const parts = pairs.flatMap((pair) => {
    const twin = twinOf(model, pair);
    const entry = foundOf(twin ?? pair);
    return entry === null ? [] : [twin === null ? entry : mirrorEntry(entry)];
  });
  let worst: CheckEntry | null = null;
  for (const entry of parts) if (worst === null || entry.gap < worst.gap) worst = entry;
  const verdict: Verdict = parts.some((e) => e.verdict === "rubs")
    ? "rubs"
    : parts.some((e) => e.verdict === "close")
      ? "close"
      : "clear";
  const { limits, ...passed } = shares[0]!.range;
  return {
    verdict,
    worst,
    parts,
    limits,
    ...passed,
    ...(shares.some(({ isCut }) => isCut) ? { cutShort: true } : {}),
  };
}

/** Of a mirrored truck with the mirror images: what is searched on its left side alone is of both. */
function knownOf({ mirrored }: Model, known: readonly KnownPose[]): readonly KnownPose[] {
  return mirrored ? known.flatMap((pose) => [pose, { ...pose, steer: -pose.steer }]) : known;
}

/** Every pair of a list; those that a share of the budget ended once more with what is left of it. @returns `open`: still ended first */
function searchPairs(
  model: Model,
  pairs: readonly Pair[],
  ranges: Readonly<Record<Side, SideRange>>,
  tolerance: number,
  budget: Budget,
): { readonly found: Map<Pair, CheckEntry | null>; readonly open: readonly Pair[] } {
  const found = new Map<Pair, CheckEntry | null>();
  let open = pairs;
  for (let round = 0; round < ROUNDS && open.length > 0; round++) {
    const cut: Pair[] = [];
    for (const [i, pair] of open.entries()) {
      const share = budget.share(open.length - i);
      const entry = searchPair(model, pair, ranges[pair.side], tolerance, share);
      found.set(pair, better(found.get(pair) ?? null, entry, model.setup.allowance));
      if (share.cut) cut.push(pair);
    }
    open = cut;
  }
  return { found, open };
}

/** The pairs that are searched: of two mirror images the left one. */
export function ownPairs(model: Model): readonly Pair[] {
  return model.pairs.filter((pair) => twinOf(model, pair) === null);
}

/** The left pair whose mirror image a right one is, the steering mirrored too; null where it is none. */
function twinOf(model: Model, pair: Pair): Pair | null {
  if (pair.side === "left" || !model.mirrored || !isMirrorImage(model, pair)) return null;
  return (
    model.pairs.find((left) => left.side === "left" && left.kind === pair.kind && left.name === pair.name) ??
    null
  );
}

/** Those that are passed, or may be; null where the setup gives no limits. */
function limitsToKeep(model: Model, aloneSides: boolean, budget: Budget): readonly LimitOverRange[] | null {
  const { limits, airSpring } = model.setup;
  return limits === null && airSpring === null ? null : limitsPassed(model, aloneSides, budget);
}

function limitedBy(passed: readonly LimitOverRange[], ranges: Readonly<Record<Side, SideRange>>): string[] {
  const names = passed.filter(({ side }) => ranges[side].wheel.limits !== undefined).map(({ name }) => name);
  return [...new Set(names)];
}

/** Whether what the right one is measured against is the mirror image of the left one of that name. */
function isMirrorImage(model: Model, { kind, name }: Pair): boolean {
  return kind !== "body" || model.setup.truck.body.some((b) => b.name === name && b.side === "both");
}
