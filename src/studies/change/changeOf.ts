import type { VerdictCell } from "../chart/chartTypes.ts";
import { hintsOf, type PoseHints } from "../chart/poseHints.ts";
import { truckVerdict } from "../chart/truckVerdict.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { type CheckReport, checkClearance, rangesToCheck } from "../reports/check.ts";
import { ALL_POSES } from "../search/sideRange.ts";
import { smallestStep } from "../window/smallestStep.ts";
import { type Setting, type TruckToVary, truckWith } from "../window/truckOverField.ts";
import { DEFAULT_REACH, WINDOW_TOLERANCE } from "../window/windowField.ts";
import { alsoMoves } from "./alsoMoves.ts";
import { type Candidate, candidatesOf } from "./candidates.ts";
import type { ChangeReport, FoundChange, SetField } from "./changeTypes.ts";
import { EFFORT, TRIM } from "./effort.ts";

export interface ChangeOptions {
  /** What may be changed, least effort first: keys of lengths and angles, and `TRIM`. Default `EFFORT`. */
  readonly order?: readonly string[];
  readonly budget?: Budget;
}

/** Shares of the greatest change tried first, each twice the one before. */
const DOUBLINGS = 8;

/** Microseconds, about, of a look at one truck. */
const LOOK_WORK = 10_000;

/** Shares of the greatest change of a first field tried with a second one. */
const SHARES = [0.05, 0.1, 0.2];

/** Fields of which pairs are tried, the first of the order. */
const PAIRED = 5;

/** Of the budget a part at most is for what is moved besides. */
const MOVES_PART = 4;

/**
 * The smallest single change of each field that may change with which the truck clears, least effort first; pairs where no single
 * one does. Each is proven by a check to clear; that nothing smaller does is not. mm and radians.
 */
export function changeOf(truck: TruckToVary, model: Model, options: ChangeOptions = {}): ChangeReport {
  const { order = EFFORT, budget = Budget.endless() } = options;
  const check = checkClearance(model, { budget: budget.share(MOVES_PART) });
  const cut = () => (budget.cut ? { cutShort: true as const } : {});
  if (check.verdict === "clear") return { verdict: "clear", changes: [], without: [], ...cut() };
  const search = new ChangeSearch(truck, model, budget);
  const candidates = candidatesOf(truck, order);
  const found: FoundChange[] = [];
  const without: string[] = [];
  for (const key of order) {
    if (key === TRIM) {
      const trimmed = trimOf(check, model);
      if (trimmed !== null) found.push(trimmed);
      continue;
    }
    const candidate = candidates.find(({ field }) => field.key === key);
    if (candidate === undefined) continue;
    const single = search.smallest(candidate, []);
    if (single === null) without.push(key);
    else found.push(search.toldOf([single]));
  }
  if (found.length === 0) found.push(...search.pairs(candidates.slice(0, PAIRED)));
  return { verdict: check.verdict, changes: found, without, ...cut() };
}

/** The body part that alone is too near, cut back by what it is short of; null where anything else is too near too. */
function trimOf({ parts }: CheckReport, model: Model): FoundChange | null {
  const near = parts.filter(({ verdict }) => verdict !== "clear");
  const names = new Set(near.map(({ part }) => part));
  const [part] = names;
  if (part === undefined || names.size > 1 || !model.setup.truck.body.some(({ name }) => name === part))
    return null;
  const rest = parts.filter((entry) => entry.part !== part);
  const { allowance } = model.setup;
  const least = (of: (entry: (typeof parts)[number]) => number) =>
    rest.length === 0 ? null : Math.min(...rest.map(of));
  return {
    set: [],
    trim: {
      part,
      depth: allowance - Math.min(...near.map(({ bound }) => bound)),
    },
    gap: Math.min(allowance, least(({ gap }) => gap) ?? allowance),
    bound: Math.min(allowance, least(({ bound }) => bound) ?? allowance),
    alsoMoves: [{ what: "fenderCover" }],
  };
}

class ChangeSearch {
  private readonly hints: PoseHints;

  constructor(
    private readonly truck: TruckToVary,
    private readonly model: Model,
    private readonly budget: Budget,
  ) {
    const { ranges } = rangesToCheck(model, ALL_POSES, budget.share(MOVES_PART));
    this.hints = hintsOf([{ model, ranges }], budget);
  }

  /** The smallest change of a field, either way, with which the truck clears; null where none was found. */
  smallest({ field, ways }: Candidate, others: readonly Setting[]): Setting | null {
    const tolerance = WINDOW_TOLERANCE[field.kind];
    let best: number | null = null;
    for (const way of ways) {
      const end = way > 0 ? field.most - field.now : field.now - field.least;
      const most = Math.min(
        DEFAULT_REACH[field.kind],
        end * (1 - 1e-9),
        best === null ? Number.POSITIVE_INFINITY : Math.abs(best),
      );
      if (!(most > tolerance)) continue;
      const clears = (step: number) => this.clears([...others, [field, field.now + way * step]]);
      const step = smallestStep(clears, most / 2 ** DOUBLINGS, most, tolerance, () => this.isSpent());
      if (step !== null) best = way * step;
    }
    return best === null ? null : [field, field.now + best];
  }

  /** Changes of two fields: of one a share of what it may change, of the other the least that then does. */
  pairs(candidates: readonly Candidate[]): readonly FoundChange[] {
    const found: FoundChange[] = [];
    for (const [i, first] of candidates.entries())
      for (const second of candidates.slice(i + 1)) {
        const pair = this.pair(first, second);
        if (pair !== null) found.push(pair);
      }
    return found;
  }

  private pair({ field, ways }: Candidate, second: Candidate): FoundChange | null {
    for (const share of SHARES)
      for (const way of ways) {
        const end = way > 0 ? field.most - field.now : field.now - field.least;
        const step = share * Math.min(DEFAULT_REACH[field.kind], end);
        const first: Setting = [field, field.now + way * step];
        const other = this.smallest(second, [first]);
        if (other !== null) return this.toldOf([first, other]);
      }
    return null;
  }

  toldOf(settings: readonly Setting[]): FoundChange {
    const made = truckWith(this.truck, settings);
    if (!made.ok) throw new TypeError("ChangeSearch: a truck that cleared goes together");
    const cell = this.look(made.value);
    const set = settings.map(([{ key, kind, now }, to]): SetField => ({ key, kind, from: now, to }));
    const moved = alsoMoves(this.model, made.value, this.budget.share(MOVES_PART));
    return {
      set,
      trim: null,
      gap: cell?.gap ?? null,
      bound: cell?.bound ?? null,
      alsoMoves: moved,
    };
  }

  private clears(settings: readonly Setting[]): boolean {
    if (this.isSpent()) return false;
    const made = truckWith(this.truck, settings);
    return made.ok && this.look(made.value)?.verdict === "clear";
  }

  private look(model: Model): VerdictCell | null {
    const { low, high } = limitTravel(model);
    if (!(low <= high)) return null;
    const share = this.budget.share(1);
    const { ranges } = rangesToCheck(model, ALL_POSES, share);
    const help = {
      ranges,
      hints: this.hints,
      carried: () => Number.NEGATIVE_INFINITY,
    };
    const cell = truckVerdict(model, ALL_POSES, help, share);
    return cell.kind === "verdict" ? cell : null;
  }

  private isSpent(): boolean {
    return this.budget.isSpent(LOOK_WORK);
  }
}
