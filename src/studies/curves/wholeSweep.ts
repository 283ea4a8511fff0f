import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { DEFAULT_SWEEP_ROWS, type Sweep, sweepOf } from "../reports/sweep.ts";
import { type RollRow, rollCurve } from "./rollCurve.ts";
import { type SuspensionRow, suspensionRow } from "./suspensionRow.ts";

/** Every table behind the plots. */
export interface WholeSweep extends Sweep {
  /** At the travels of `byTravel`, in its order. */
  readonly suspension: readonly SuspensionRow[];
  /** The body rolled over the floor, from right side up to left side up, at travel 0. */
  readonly byRoll: readonly RollRow[];
}

/**
 * A sweep with what the suspension does at each height, and the body rolled at travel 0.
 * @param rows of each table, whole, at least 2. @throws RangeError for other numbers.
 */
export function wholeSweep(
  model: Model,
  rows: number = DEFAULT_SWEEP_ROWS,
  budget: Budget = Budget.endless(),
): WholeSweep {
  const sweep = sweepOf(model, rows, budget.share(2));
  // A hundredth of what the gaps of a row take.
  const suspension = sweep.byTravel.map(({ travel }) => suspensionRow(model, travel));
  const byRoll = rollCurve(model, 0, rows, budget);
  return { ...sweep, suspension, byRoll, ...(budget.cut ? { cutShort: true } : {}) };
}
