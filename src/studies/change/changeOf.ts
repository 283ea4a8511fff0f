import type { VerdictCell } from "../chart/chartTypes.ts";
import { hintsOf, type PoseHints } from "../chart/poseHints.ts";
import { truckVerdict } from "../chart/truckVerdict.ts";
import { limitTravel } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { type Proof, Touches } from "../odds/touches.ts";
import { checkClearance, rangesToCheck } from "../reports/check.ts";
import { ALL_POSES } from "../search/sideRange.ts";
import { smallestStep } from "../window/opening.ts";
import { type Setting, type TruckToVary, truckWith } from "../window/truckOverField.ts";
import { DEFAULT_REACH, WINDOW_TOLERANCE } from "../window/windowField.ts";
import { alsoMoves } from "./alsoMoves.ts";
import { type Candidate, candidatesOf, EFFORT, TRIM } from "./changeField.ts";
import type { ChangeReport, FoundChange, SetField, Smaller, TriedField } from "./changeTypes.ts";
import { comesAndGoes, fitsBetween, triedRange } from "./fitsBetween.ts";
import { lockReached } from "./lockReached.ts";
import { isSmallestPair, pairSlack, provenSmallest } from "./provenSmallest.ts";
import { trimChange } from "./trimChange.ts";

export interface ChangeOptions {
  /** What may be changed, least effort first: keys of lengths and angles, and `TRIM`. Default `EFFORT`. */
  readonly order?: readonly string[];
  readonly budget?: Budget;
}

/** Shares of the greatest change tried first, each twice the one before. */
const DOUBLINGS = 8;

/** Microseconds, about, of a look at one truck. */
const LOOK_WORK = 5000;

/** Shares of the greatest change of a first field tried with a second one. */
const SHARES = [0.05, 0.1, 0.2];

/** Pairs told; least effort first all are tried until then, or until the budget is spent. */
const MOST_PAIRS = 5;

/** Steps farther at most until a check says so too: what is left open at a border it settles on the other side. */
const MOST_FARTHER = 3;

/** Rounds in which each of a pair is brought back as far as the other lets it. */
const PAIR_ROUNDS = 2;

/** Of what is left of the budget a part at most is for the region that is trimmed. */
const TRIM_PART = 1.5;

/** Of the budget a part at most is for the check as it stands. */
const CHECK_PART = 4;

/**
 * The smallest single change of each field that may change with which the truck clears, least effort first; pairs where no single
 * one does, and pairs of the others where only one of the knuckle does: before a knuckle is made anew. Each is proven by a check to clear; it is told what is known of smaller ones. mm and radians. What a budget ends first
 * is what is known of smaller ones, then pairs.
 */
export function changeOf(truck: TruckToVary, model: Model, options: ChangeOptions = {}): ChangeReport {
  const { order = EFFORT, budget = Budget.endless() } = options;
  const check = checkClearance(model, { budget: budget.share(CHECK_PART) });
  const cut = () => (budget.cut ? { cutShort: true as const } : {});
  if (check.verdict === "clear") return { verdict: "clear", changes: [], without: [], ...cut() };
  const search = new ChangeSearch(truck, model, budget);
  const candidates = candidatesOf(truck, order);
  const without: TriedField[] = [];
  const singles = new Map<string, Told>();
  const asked = order.flatMap((key) => candidates.find(({ field }) => field.key === key) ?? []);
  const missed = asked.filter((candidate) => {
    const single = search.single(candidate);
    if (single !== null) singles.set(candidate.field.key, single);
    return single === null;
  });
  const isSettled = !search.isSpent();
  const trimmed = order.includes(TRIM) ? trimChange(check, model, truck, budget.share(TRIM_PART)) : null;
  const between = missed.filter(comesAndGoes);
  // Half of what is left: pairs and proofs are to have theirs.
  const forWindows = budget.share(2);
  for (const candidate of missed) {
    const { key, kind } = candidate.field;
    const at = between.indexOf(candidate);
    const { single, step } =
      at < 0
        ? { single: null, step: null }
        : search.anywhere(candidate, forWindows.share(between.length - at));
    if (single === null && isSettled) without.push({ key, kind, ...triedRange(candidate), step });
    else if (single !== null && single !== "open") singles.set(key, single);
  }
  if (singles.size === 0 && trimmed === null)
    return { verdict: check.verdict, changes: search.pairs(candidates), without, ...cut() };
  const isKnuckleAlone = trimmed === null && [...singles.keys()].every((key) => key.startsWith("knuckle."));
  const others = candidates.filter(({ field }) => !field.key.startsWith("knuckle."));
  const isPaired = isKnuckleAlone && others.length > 1;
  // What pairs may take stands apart from the proofs of singles.
  let open = singles.size + (isPaired ? 1 : 0);
  const changes = order.flatMap((key): FoundChange[] => {
    if (key === TRIM) return trimmed === null ? [] : [trimmed];
    const single = singles.get(key);
    return single === undefined ? [] : [search.provenSmallest(single, open--)];
  });
  const pairs = isPaired ? search.pairs(others) : [];
  const paired = isPaired ? { isPaired: true as const } : {};
  return { verdict: check.verdict, changes: [...pairs, ...changes], without, ...paired, ...cut() };
}

/** A change that clears, with what is told of it. */
interface Told {
  readonly settings: readonly Setting[];
  readonly told: FoundChange;
}

class ChangeSearch {
  private readonly hints: PoseHints;
  private readonly touches: Touches;
  private readonly allowance: number;

  constructor(
    private readonly truck: TruckToVary,
    private readonly model: Model,
    private readonly budget: Budget,
  ) {
    const { ranges } = rangesToCheck(model, ALL_POSES, budget.share(CHECK_PART));
    this.hints = hintsOf([{ model, ranges }], budget);
    this.allowance = model.setup.allowance;
    this.touches = new Touches(this.allowance);
  }

  /** The smallest change of one field, either way, with which the truck clears; null where none was found. */
  single(candidate: Candidate): Told | null {
    const setting = this.smallest(candidate, []);
    return setting === null ? null : this.toldOf([setting]);
  }

  /**
   * The same of a field whose steps all failed, by its window over the whole range that is looked at; null = no value of it fits,
   * of those looked at every `step`, or of all.
   * @param budget of that window
   */
  anywhere(
    candidate: Candidate,
    budget: Budget,
  ): { readonly single: Told | "open" | null; readonly step: number | null } {
    if (this.isSpent()) return { single: "open", step: null };
    const { values, isOpen, step } = fitsBetween(this.truck, candidate, budget);
    for (const value of values) {
      const told = this.toldOf([[candidate.field, value]]);
      if (told !== null) return { single: told, step };
    }
    return { single: isOpen || values.length > 0 || this.isSpent() ? "open" : null, step };
  }

  /** The same, or a smaller one where the window of its field knows of one. @param open proofs that still share the budget */
  provenSmallest({ settings, told }: Told, open: number): FoundChange {
    const [single] = settings as readonly [Setting];
    const { setting, smaller } = provenSmallest(this.truck, single, this.budget.share(open), (one) =>
      this.clears([one]),
    );
    if (setting[1] === single[1]) return { ...told, smaller };
    return this.toldOf([setting], smaller)?.told ?? told;
  }

  /** Changes of two fields, least effort first: the two together count. */
  pairs(candidates: readonly Candidate[]): readonly FoundChange[] {
    const found: Told[] = [];
    const all = candidates
      .flatMap((first, i) =>
        candidates.slice(i + 1).map((second, k) => ({ first, second, effort: 2 * i + k })),
      )
      .sort((a, b) => a.effort - b.effort);
    for (const { first, second } of all) {
      if (found.length === MOST_PAIRS || this.isSpent()) break;
      const pair = this.pair(first, second) ?? this.pair(second, first);
      if (pair !== null) found.push(pair);
    }
    return found.map((pair, i) => this.provenPair(pair, found.length - i));
  }

  /** The same, with what is proven of smaller ones. @param open proofs that still share the budget */
  private provenPair({ settings, told }: Told, open: number): FoundChange {
    const pair = settings as readonly [Setting, Setting];
    const misses = (some: readonly Setting[]) => this.proofOf(some) === "misses";
    if (told.smaller.rank !== "stepped" || this.isSpent()) return told;
    return isSmallestPair(this.truck, pair, this.budget.share(open), misses)
      ? { ...told, smaller: { rank: "proven pair", within: pairSlack(pair) } }
      : told;
  }

  /** Of the first a share of what it may change, of the second the least that then does; then each brought back as far as it goes. */
  private pair({ field, ways }: Candidate, second: Candidate): Told | null {
    for (const share of SHARES)
      for (const way of ways) {
        const end = way > 0 ? field.most - field.now : field.now - field.least;
        const step = share * Math.min(DEFAULT_REACH[field.kind], end);
        const first: Setting = [field, field.now + way * step];
        const other = this.smallest(second, [first]);
        if (other === null) continue;
        const told = this.toldOf(...this.broughtBack(first, other));
        if (told !== null) return told;
      }
    return null;
  }

  private broughtBack(first: Setting, second: Setting): [readonly Setting[], Smaller] {
    let [a, b] = [first, second];
    const misses = (...settings: Setting[]) => this.proofOf(settings) === "misses";
    const isStep = () => misses(stepLess(a), b) && misses(a, stepLess(b));
    for (let round = 0; round < PAIR_ROUNDS; round++) {
      a = this.leastOf(a, b);
      b = this.leastOf(b, a);
      if (isStep())
        return [[a, b], { rank: "stepped", steps: [a, b].map(([{ kind }]) => WINDOW_TOLERANCE[kind]) }];
      if (this.isSpent()) break;
    }
    return [[a, b], { rank: "searched" }];
  }

  /** The least of a change that clears with another one, by halving what there is of it. */
  private leastOf([field, to]: Setting, other: Setting): Setting {
    let [low, high] = [0, to - field.now];
    while (Math.abs(high - low) > WINDOW_TOLERANCE[field.kind] && !this.isSpent()) {
      const middle = 0.5 * (low + high);
      if (this.clears([[field, field.now + middle], other])) high = middle;
      else low = middle;
    }
    return [field, field.now + high];
  }

  private smallest({ field, ways }: Candidate, others: readonly Setting[]): Setting | null {
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

  /** What is told of a change once a check says that it clears: with the last of its fields a little farther where it takes that. */
  private toldOf(settings: readonly Setting[], smaller: Smaller = { rank: "searched" }): Told | null {
    const [field, to] = settings.at(-1)!;
    for (let farther = 0; farther <= MOST_FARTHER; farther++) {
      const last: Setting = [field, to + farther * Math.sign(to - field.now) * WINDOW_TOLERANCE[field.kind]];
      const all = [...settings.slice(0, -1), last];
      const made = truckWith(this.truck, all);
      const cell = made.ok ? this.look(made.value) : null;
      if (!made.ok || cell?.verdict !== "clear") continue;
      const { gap, bound } = cell;
      const set = all.map((setting) => this.setField(setting));
      const told = { set, trim: null, gap, bound, alsoMoves: alsoMoves(this.model, made.value, this.budget) };
      return { settings: all, told: { ...told, smaller: farther === 0 ? smaller : { rank: "searched" } } };
    }
    return null;
  }

  private setField([{ key, kind, now }, to]: Setting): SetField {
    const reached = key === "limits.steeringStop.angle" ? lockReached(this.model) : null;
    return { key, kind, from: now, to, ...(reached !== null && reached < now ? { reached } : {}) };
  }

  /** Whether it is proven that the truck keeps its allowance. */
  private clears(settings: readonly Setting[]): boolean {
    return this.proofOf(settings) === "keeps";
  }

  /** What is proven of the truck's allowance; one that does not go together misses it. */
  private proofOf(settings: readonly Setting[]): Proof {
    if (this.isSpent()) return "open";
    const made = truckWith(this.truck, settings);
    if (!made.ok || !hasHeight(made.value)) return "misses";
    const { allowance } = made.value.setup;
    const touches = allowance === this.allowance ? this.touches : new Touches(allowance);
    return touches.of(made.value, this.budget.share(1));
  }

  private look(model: Model): VerdictCell | null {
    if (!hasHeight(model)) return null;
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

  isSpent(): boolean {
    return this.budget.isSpent(LOOK_WORK);
  }
}

function hasHeight(model: Model): boolean {
  const { low, high } = limitTravel(model);
  return low <= high;
}

/** A change by its tolerance less. */
function stepLess([field, to]: Setting): Setting {
  return [field, to - Math.sign(to - field.now) * WINDOW_TOLERANCE[field.kind]];
}
