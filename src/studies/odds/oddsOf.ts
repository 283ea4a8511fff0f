import { requirePositive } from "../../geometry/requireFinite.ts";
import { Budget } from "../numeric/budget.ts";
import { wilsonInterval } from "../numeric/wilson.ts";
import type { TruckToVary } from "../window/truckOverField.ts";
import { DrawnTrucks } from "./drawnTrucks.ts";
import type { OddsInput } from "./oddsInputs.ts";
import { Touches } from "./touches.ts";
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

/**
 * Draws trucks by the uncertainty of each number and proves of each whether it clears over all travel and both locks. A number
 * is off by a normal deviate; numbers without an uncertainty are exact. The same seed gives the same figure on any machine. The
 * interval is Wilson's for draws at random; scattered points do better as a rule, so it errs to the wide side.
 * @throws RangeError for draws that are no whole number from 1 to a million
 */
export function oddsOf(truck: TruckToVary, options: OddsOptions = {}): OddsReport {
  const { draws = DEFAULT_DRAWS, seed = DEFAULT_SEED, gap = 0, within, onProgress } = options;
  if (!Number.isInteger(draws) || draws < 1 || draws > MOST_DRAWS)
    throw new RangeError(`oddsOf: draws must be a whole number from 1 to ${MOST_DRAWS}, got ${draws}`);
  if (within !== undefined) requirePositive("oddsOf", within);
  const budget = options.budget ?? Budget.endless();
  const drawn = new DrawnTrucks(truck, seed);
  const touches = new Touches(gap);
  const deviations: Float64Array[] = [];
  const clears: boolean[] = [];
  let [kept, open, apart] = [0, 0, 0];
  const interval = () => {
    const { low } = wilsonInterval(kept, clears.length, CONFIDENCE);
    const { high } = wilsonInterval(kept + open, clears.length, CONFIDENCE);
    return { low, high };
  };
  let isCut = false;
  for (let draw = 0; draw < draws; draw++) {
    const row = new Float64Array(drawn.inputs.length);
    drawn.deviationsTo(row, draw);
    const made = drawn.at(row);
    const proof = made.ok ? touches.of(made.value, budget) : "apart";
    // What the budget ended is no draw.
    if (budget.cut) {
      isCut = true;
      break;
    }
    if (proof === "keeps") kept++;
    else if (proof === "open") open++;
    else if (proof === "apart") apart++;
    deviations.push(row);
    clears.push(proof === "keeps");
    if (budget.isSpent(DRAW_WORK)) {
      isCut = draw + 1 < draws;
      break;
    }
    if ((draw + 1) % ROUND !== 0) continue;
    onProgress?.((draw + 1) / draws);
    if (within === undefined || draw + 1 < LEAST_DRAWS) continue;
    const { low, high } = interval();
    if (0.5 * (high - low) <= within) break;
  }
  const count = clears.length;
  return {
    clears: count === 0 ? 0 : kept / count,
    ...interval(),
    confidence: CONFIDENCE,
    draws: count,
    seed,
    gap,
    open,
    apart,
    matters: count === 0 ? [] : whatMatters({ inputs: drawn.inputs, deviations, clears }),
    inputs: drawn.inputs,
    leftOut: drawn.leftOut,
    ...(isCut ? { cutShort: true as const } : {}),
  };
}

/** Microseconds, about, of putting one truck together. */
const DRAW_WORK = 500;
