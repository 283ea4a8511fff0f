import { requirePositive } from "../../geometry/requireFinite.ts";
import { Budget } from "../numeric/budget.ts";
import { wilsonInterval } from "../numeric/normalQuantile.ts";
import type { TruckToVary } from "../window/truckOverField.ts";
import { DrawnTrucks } from "./drawnTrucks.ts";
import type { OddsInput } from "./oddsInputs.ts";
import { type Proof, Touches } from "./touches.ts";
import { type Matter, whatMatters } from "./whatMatters.ts";

/** How likely a truck clears, of all trucks that its numbers may stand for. mm, radians. */
export interface OddsReport {
  /** Share of the draws proven to clear over all travel and both locks. */
  readonly clears: number;
  /** Between these lies the share of all such trucks, with `confidence`. */
  readonly low: number;
  readonly high: number;
  readonly confidence: number;
  readonly draws: number;
  readonly seed: number;
  /** mm. What clears keeps this gap: 0 = nothing touches. */
  readonly gap: number;
  /** Draws of which neither is proven: counted as touching in `clears` and `low`, as clear in `high`. */
  readonly open: number;
  /** Draws whose parts do not go together: counted as touching. */
  readonly apart: number;
  /** Most first. */
  readonly matters: readonly Matter[];
  readonly inputs: readonly OddsInput[];
  /** Keys of numbers with a ± that is not drawn. */
  readonly leftOut: readonly string[];
  /** The budget was spent before all draws were done. */
  readonly cutShort?: true;
}

export interface OddsOptions {
  readonly draws?: number;
  /** A whole number. */
  readonly seed?: number;
  /** mm. The gap to keep; default 0: nothing touches. */
  readonly gap?: number;
  /** Stops before all draws are done once the interval is no wider than this to either side; default never. */
  readonly within?: number;
  readonly budget?: Budget;
  /** Tells the share done, 0 … 1. */
  readonly onProgress?: (share: number) => void;
}

export const DEFAULT_DRAWS = 2000;
export const DEFAULT_SEED = 1;

/** Of the interval. */
const CONFIDENCE = 0.95;

/** Draws after which the interval is looked at, and progress is told. */
const ROUND = 50;

/** Fewest draws before it is precise: of few, all may clear by chance. */
const LEAST_DRAWS = 200;

/** Most draws of one answer: their points are told apart, and more tell nothing a builder could use. */
export const MOST_DRAWS = 1_000_000;

/** What one draw showed; `apart` where its parts do not go together. */
export type DrawProof = Proof | "apart";

/** Every `of`-th draw, from the `at`-th on. */
export interface ShareOfDraws {
  readonly at: number;
  readonly of: number;
}

/** What one of several searchers found: plain data, in the order of its draws; put together by `oddsTogether`. */
export interface OddsShare extends ShareOfDraws {
  readonly proofs: readonly DrawProof[];
}

/**
 * Draws trucks by the uncertainty of each number and proves of each whether it clears over all travel and both locks. A number
 * is off by a normal deviate; numbers without an uncertainty are exact. The same seed gives the same figure on any machine. The
 * interval is Wilson's for draws at random; scattered points do better as a rule, so it errs to the wide side.
 * @throws RangeError for draws that are no whole number from 1 to a million
 */
export function oddsOf(truck: TruckToVary, options: OddsOptions = {}): OddsReport {
  const drawn = new DrawnTrucks(truck, options.seed ?? DEFAULT_SEED);
  const share = shareOf(drawn, { at: 0, of: 1 }, options);
  return together(drawn, [share], options);
}

/**
 * Some of the draws alone: no proof depends on the draws before it, so the report of all shares is the same however many there
 * are. Looks at all its draws, whether fewer would be precise enough or not, until the budget is spent.
 */
export function oddsShare(truck: TruckToVary, which: ShareOfDraws, options: OddsOptions = {}): OddsShare {
  const { within: _, ...all } = options;
  return shareOf(new DrawnTrucks(truck, options.seed ?? DEFAULT_SEED), which, all);
}

/** The report that all shares make together. @param shares every one, at least one */
export function oddsTogether(
  truck: TruckToVary,
  shares: readonly OddsShare[],
  options: OddsOptions = {},
): OddsReport {
  return together(new DrawnTrucks(truck, options.seed ?? DEFAULT_SEED), shares, options);
}

function shareOf(drawn: DrawnTrucks, { at, of }: ShareOfDraws, options: OddsOptions): OddsShare {
  const { draws = DEFAULT_DRAWS, gap = 0, within, onProgress } = options;
  if (!Number.isInteger(draws) || draws < 1 || draws > MOST_DRAWS)
    throw new RangeError(`oddsOf: draws must be a whole number from 1 to ${MOST_DRAWS}, got ${draws}`);
  if (within !== undefined) requirePositive("oddsOf", within);
  const budget = options.budget ?? Budget.endless();
  const touches = new Touches(gap);
  const proofs: DrawProof[] = [];
  const row = new Float64Array(drawn.inputs.length);
  const count = new Counted(within);
  for (let draw = at; draw < draws; draw += of) {
    drawn.deviationsTo(row, draw);
    const made = drawn.at(row);
    const proof = made.ok ? touches.of(made.value, budget) : "apart";
    // What the budget ended is no draw.
    if (budget.cut) break;
    proofs.push(proof);
    if (budget.isSpent(DRAW_WORK)) break;
    if (proofs.length % ROUND === 0) onProgress?.((draw + 1) / draws);
    if (count.isEnoughWith(proof)) break;
  }
  return { at, of, proofs };
}

/** Draws counted in their order. */
class Counted {
  draws = 0;
  kept = 0;
  open = 0;
  apart = 0;

  constructor(private readonly within: number | undefined) {}

  /** Whether it is precise enough with one more. */
  isEnoughWith(proof: DrawProof): boolean {
    this.draws++;
    if (proof === "keeps") this.kept++;
    else if (proof === "open") this.open++;
    else if (proof === "apart") this.apart++;
    if (this.within === undefined || this.draws % ROUND !== 0 || this.draws < LEAST_DRAWS) return false;
    const { low, high } = this.interval();
    return 0.5 * (high - low) <= this.within;
  }

  interval(): { readonly low: number; readonly high: number } {
    const { low } = wilsonInterval(this.kept, this.draws, CONFIDENCE);
    const { high } = wilsonInterval(this.kept + this.open, this.draws, CONFIDENCE);
    return { low, high };
  }
}

function together(drawn: DrawnTrucks, shares: readonly OddsShare[], options: OddsOptions): OddsReport {
  const { draws = DEFAULT_DRAWS, seed = DEFAULT_SEED, gap = 0, within } = options;
  const of = shares.length;
  const inOrder = [...shares].sort((a, b) => a.at - b.at);
  const count = new Counted(within);
  const deviations: Float64Array[] = [];
  const clears: boolean[] = [];
  let isCut = false;
  // Up to the first draw that some share did not come to.
  for (let draw = 0; draw < draws; draw++) {
    const proof = inOrder[draw % of]!.proofs[Math.floor(draw / of)];
    if (proof === undefined) {
      isCut = true;
      break;
    }
    const row = new Float64Array(drawn.inputs.length);
    drawn.deviationsTo(row, draw);
    deviations.push(row);
    clears.push(proof === "keeps");
    if (count.isEnoughWith(proof)) break;
  }
  return {
    clears: count.draws === 0 ? 0 : count.kept / count.draws,
    ...count.interval(),
    confidence: CONFIDENCE,
    draws: count.draws,
    seed,
    gap,
    open: count.open,
    apart: count.apart,
    matters: count.draws === 0 ? [] : whatMatters({ inputs: drawn.inputs, deviations, clears }),
    inputs: drawn.inputs,
    leftOut: drawn.leftOut,
    ...(isCut ? { cutShort: true as const } : {}),
  };
}

/** Microseconds, about, of putting one truck together. */
const DRAW_WORK = 500;
