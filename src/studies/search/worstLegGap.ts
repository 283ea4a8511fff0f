import { Budget } from "../numeric/budget.ts";
import { LegSearch, type LegsToSearch, type WorstLegGap } from "./legSearch.ts";
import { type PoseRange, type PoseToStart, requireSearchable } from "./worstGap.ts";

/**
 * Worst gap between a solid and the legs of a pair over a continuous range of travel and steer, by best-first
 * branch and bound over poses and the legs together, as `worstGap` does for what stands still: each node is a
 * cell of poses × a piece of one leg, bounded by `boundCell` and `boundFan`, the better one counting, with the
 * motion `legMotionTo` proves. Ends when gap − bound ≤ `tolerance` (mm), or `borderTolerance` where the border of
 * reach decides. @param start a pose of the range that keeps all limits. @param budget ends it with what it has reached.
 * @returns null when no pose of the range is in reach, or none was found before the budget was spent.
 * @throws RangeError as `requireSearchable`
 */
export function worstLegGap(
  legs: LegsToSearch,
  range: PoseRange,
  tolerance: number,
  borderTolerance = tolerance,
  start: PoseToStart | null = null,
  budget: Budget = Budget.endless(),
): WorstLegGap | null {
  requireSearchable("worstLegGap", range, tolerance, borderTolerance);
  return new LegSearch(legs, range, borderTolerance, start).run(tolerance, budget);
}
