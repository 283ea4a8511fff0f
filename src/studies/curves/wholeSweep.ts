import { limitReader } from "../limits/limitsOf.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { type CheckEntry, checkClearance } from "../reports/check.ts";
import { DEFAULT_SWEEP_ROWS, type Sweep, type SweepRow, sweepOf, sweepRow } from "../reports/sweep.ts";
import { type RollRow, rollCurve } from "./rollCurve.ts";
import { type SuspensionRow, suspensionRow } from "./suspensionRow.ts";

/** Every table behind the plots. */
export interface WholeSweep extends Sweep {
  /** At the travels of `byTravel`, in its order. */
  readonly suspension: readonly SuspensionRow[];
  /** The body rolled over the floor, from right side up to left side up, at travel 0. */
  readonly byRoll: readonly RollRow[];
  /** Where each part comes nearest of all poses, as a check finds it, left side first: no table along one of them holds that. */
  readonly worst: readonly WorstRow[];
}

/** The pose of a part's worst gap. */
export interface WorstRow extends Pick<CheckEntry, "part" | "side" | "gap"> {
  /** Of a truck whose wheels go up and down by themselves only this side counts: the other need not stand so. */
  readonly row: SweepRow;
  /** The search was ended first: it may come nearer elsewhere. */
  readonly isSoFar: boolean;
}

/** How far inside a pose at the border of reach is solved again where rounding puts it outside; a share of its steer. */
const INSIDE = 1 - 1e-6;

/**
 * A sweep with what the suspension does at each height, the body rolled at travel 0, and the pose of each part's worst gap.
 * @param rows of each table, whole, at least 2. @throws RangeError for other numbers.
 */
export function wholeSweep(
  model: Model,
  rows: number = DEFAULT_SWEEP_ROWS,
  budget: Budget = Budget.endless(),
): WholeSweep {
  const sweep = sweepOf(model, rows, budget.share(3));
  // A hundredth of what the gaps of a row take.
  const suspension = sweep.byTravel.map(({ travel }) => suspensionRow(model, travel));
  const byRoll = rollCurve(model, 0, rows, budget.share(2));
  const worst = worstRows(model, budget.share(1));
  return { ...sweep, suspension, byRoll, worst, ...(budget.cut ? { cutShort: true } : {}) };
}

function worstRows(model: Model, budget: Budget): readonly WorstRow[] {
  const { parts, cutShort = false } = checkClearance(model, { budget });
  const limitsAt = limitReader(model);
  return parts.map(({ part, side, gap, travel, steer }) => {
    const row = sweepRow(model, travel, steer, limitsAt);
    const inside = row.ok ? row : sweepRow(model, travel * INSIDE, steer * INSIDE, limitsAt);
    const own =
      inside.ok && model.setup.roll !== null
        ? { ...inside, past: inside.past.filter((one) => one.side === side) }
        : inside;
    return { part, side, gap, row: own, isSoFar: cutShort };
  });
}
