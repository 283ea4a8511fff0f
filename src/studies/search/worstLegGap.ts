import type { LegPair } from "../model/pairs.ts";
import { Budget } from "../numeric/budget.ts";
import { LegSearch } from "./legSearch.ts";
import { PoseCells, type PoseRange, type WheelToMove } from "./poseCells.ts";
import type { Tolerances } from "./search.ts";
import { type PoseToStart, TriedPose } from "./triedPose.ts";
import { requireSearchable } from "./worstGap.ts";

/** One side's leg pair with what moves it. */
export interface LegsToSearch extends WheelToMove {
  readonly pair: LegPair;
}

/** The worst gap of one leg pair over a range of poses, mm. */
export interface WorstLegGap {
  /** The gap at the pose found, of one point of the legs: the pair's own gap there may be less by rounding. */
  readonly gap: number;
  /** Proven: no pose in the range is worse than this. */
  readonly bound: number;
  readonly armAngle: number;
  readonly steer: number;
  /** How many cells were looked at: what it cost. */
  readonly cells: number;
}

/** Microseconds, about, of a gap at one pose. */
const POSE_WORK = 20;

/**
 * Worst gap between a solid and the legs of a pair over a continuous range of travel and steer, by best-first
 * branch and bound over poses and the legs together, as `worstGap` does for what stands still: each node is a
 * cell of poses × a piece of one leg, bounded by `boundCell` and `boundFan`, the better one counting, with the
 * motion `legMotionTo` proves. @param start a pose of the range that keeps all limits.
 * @param budget ends it with what it has reached.
 * @returns null when no pose of the range is in reach, or none was found before the budget was spent.
 * @throws RangeError as `requireSearchable`
 */
export function worstLegGap(
  legs: LegsToSearch,
  range: PoseRange,
  tolerances: Tolerances,
  start: PoseToStart | null = null,
  budget: Budget = Budget.endless(),
): WorstLegGap | null {
  requireSearchable("worstLegGap", range, tolerances);
  const search = new LegSearch(PoseCells.over(legs, range), legs.pair, tolerances);
  const tried = new TriedPose(legs, range);
  const take = (arm: number, steer: number) => search.take(tried, arm, steer);
  if (start !== null) tried.look(take, start.arm, start.steer);
  search.run(budget);
  if (search.gaveUp) tried.lookAtEnds(take, budget, POSE_WORK);
  if (search.best === Number.POSITIVE_INFINITY) return null;
  return {
    gap: search.best,
    bound: search.bound(),
    armAngle: search.bestArm,
    steer: search.bestSteer,
    cells: search.cells,
  };
}
