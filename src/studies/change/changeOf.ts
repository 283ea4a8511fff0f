import type { VerdictCell } from "../chart/chartTypes.ts";
import { hintsOf, type PoseHints } from "../chart/poseHints.ts";
import { truckVerdict } from "../chart/truckVerdict.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { checkClearance, rangesToCheck } from "../reports/check.ts";
import { ALL_POSES } from "../search/sideRange.ts";
import { smallestStep } from "../window/smallestStep.ts";
import { type Setting, type TruckToVary, truckWith } from "../window/truckOverField.ts";
import { DEFAULT_REACH, WINDOW_TOLERANCE } from "../window/windowField.ts";
import { alsoMoves } from "./alsoMoves.ts";
import { type Candidate, candidatesOf } from "./candidates.ts";
import type { ChangeReport, FoundChange, SetField, Smaller } from "./changeTypes.ts";
import { EFFORT, TRIM } from "./effort.ts";
import { provenSmallest } from "./provenSmallest.ts";
import { trimChange } from "./trimChange.ts";

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

/** Pairs told; least effort first all are tried until then, or until the budget is spent. */
const MOST_PAIRS = 5;

/** Of what is left of the budget a part at most is for the region that is trimmed. */
const TRIM_PART = 1.5;

/** Of the budget a part at most is for the proof that nothing smaller does, one field at a time. */
const PROOF_PART = 3;

/** Of the budget a part at most is for what is moved besides. */
const MOVES_PART = 4;

/**
 * The smallest single change of each field that may change with which the truck clears, least effort first; pairs where no single
 * one does. Each is proven by a check to clear; of single ones it is told what is known of smaller ones. mm and radians.
 */
export function changeOf(truck: TruckToVary, model: Model, options: ChangeOptions = {}): ChangeReport {
  const { order = EFFORT, budget = Budget.endless() } = options;
  const check = checkClearance(model, { budget: budget.share(MOVES_PART) });
  const cut = () => (budget.cut ? { cutShort: true as const } : {});
  if (check.verdict === "clear") return { verdict: "clear", changes: [], without: [], ...cut() };
  const search = new ChangeSearch(truck, model, budget);
  const candidates = candidatesOf(truck, order);
  const without: string[] = [];
  const singles: Setting[] = [];
  for (const key of order) {
    const candidate = candidates.find(({ field }) => field.key === key);
    if (candidate === undefined) continue;
    const single = search.smallest(candidate, []);
    if (single === null) without.push(key);
    else singles.push(single);
  }
  // What is known of smaller ones comes last: a budget that ends it leaves the changes themselves.
  const trimmed = order.includes(TRIM) ? trimChange(check, model, truck, budget.share(TRIM_PART)) : null;
  const found = order.flatMap((key): FoundChange[] => {
    if (key === TRIM) return trimmed === null ? [] : [trimmed];
    const single = singles.find(([field]) => field.key === key);
    return single === undefined ? [] : [search.provenSmallest(single)];
  });
  if (found.length === 0) found.push(...search.pairs(candidates));
  return { verdict: check.verdict, changes: found, without, ...cut() };
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

  /** The change as it is told, or a smaller one where the window of its field knows of one. */
  provenSmallest(single: Setting): FoundChange {
    const { setting, smaller } = provenSmallest(this.truck, single, this.budget.share(PROOF_PART), (one) =>
      this.clears([one]),
    );
    return this.toldOf([setting], smaller);
  }

  /** Changes of two fields: of one a share of what it may change, of the other the least that then does. */
  pairs(candidates: readonly Candidate[]): readonly FoundChange[] {
    const found: FoundChange[] = [];
    // Least effort first: the two together count.
    const all = candidates
      .flatMap((first, i) =>
        candidates.slice(i + 1).map((second, k) => ({ first, second, effort: 2 * i + k })),
      )
      .sort((a, b) => a.effort - b.effort);
    for (const { first, second } of all) {
      if (found.length === MOST_PAIRS || this.isSpent()) break;
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

  private toldOf(settings: readonly Setting[], smaller: Smaller = { rank: "searched" }): FoundChange {
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
      smaller,
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
