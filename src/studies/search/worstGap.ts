import { requireFinite, requirePositive } from "../../geometry/requireFinite.ts";
import type { BodyPair, RodPair, SpringOrShockPair } from "../model/pairs.ts";
import { Budget } from "../numeric/budget.ts";
import { PartSubject } from "./partSubject.ts";
import { PoseCells, type PoseRange, type WheelToMove } from "./poseCells.ts";
import { RodSubject } from "./rodSubject.ts";
import { Search, type Tolerances } from "./search.ts";
import { SpringOrShockSubject } from "./springOrShockSubject.ts";
import type { Subject } from "./subject.ts";
import { type PoseToStart, TriedPose } from "./triedPose.ts";

/** The worst gap of one pair over a range of poses. Left-hand frame of the side, mm. */
export interface WorstGap {
  /** The gap at the pose found; where none below `Tolerances.below` was, that, and the rest says nothing. */
  readonly gap: number;
  /** Proven: no pose in the range is worse than this. */
  readonly bound: number;
  readonly armAngle: number;
  readonly steer: number;
  /** How many cells were looked at: what it cost. */
  readonly cells: number;
}

/** What a search asks of a pair whose gap changes with the pose. */
export type MovingPair = Pick<BodyPair, "kind" | "ring" | "part"> | RodPair | SpringOrShockPair;

/** One side's pair with what moves it. */
export interface PairToSearch extends WheelToMove {
  readonly pair: MovingPair;
}

/**
 * Worst gap of one pair over a continuous range of travel and steer, by best-first branch and bound over poses and what
 * is measured together (`search.ts`).
 * @param start a pose of the range that keeps all limits.
 * @param budget once it is spent the search ends with what it has reached.
 * @returns null when no pose of the range is in reach, or none was found before the budget was spent.
 * @throws RangeError for a range that is not finite, or a tolerance that is not finite and more than 0
 */
export function worstGap(
  toSearch: PairToSearch,
  range: PoseRange,
  tolerances: Tolerances,
  start: PoseToStart | null = null,
  budget: Budget = Budget.endless(),
): WorstGap | null {
  const { asked, finer, border } = tolerances;
  requireFinite("worstGap", range.armLow, range.armHigh, range.steerLow, range.steerHigh);
  for (const tolerance of [asked, finer, border]) requirePositive("worstGap", tolerance);
  const subject = subjectOf(toSearch.pair);
  const search = new Search(PoseCells.over(toSearch, range), subject, tolerances);
  const tried = new TriedPose(toSearch, range);
  const take = (arm: number, steer: number, coarse: number) => search.take(tried, arm, steer, coarse);
  if (start !== null) tried.look(take, start.arm, start.steer);
  // Who asks for what is below some gap has looked over it; a rod is soon searched: looking ahead would take longer.
  if (toSearch.pair.kind !== "rod" && tolerances.below === undefined)
    tried.lookOver(search, take, budget, subject.work.gap);
  const done = search.run(budget);
  if (done && subject instanceof PartSubject) {
    const { hasFound } = search;
    if (hasFound && tried.stands(search.bestArm, search.bestSteer))
      subject.gap(tried.row, 0, Number.POSITIVE_INFINITY, 0);
    if (subject.goOnInside(hasFound ? search.best : null)) search.run(budget);
  }
  if (search.gaveUp) tried.lookAtEnds(take, budget, subject.work.gap);
  if (search.best === Number.POSITIVE_INFINITY) return null;
  return {
    gap: search.best,
    bound: search.bound(),
    armAngle: search.bestArm,
    steer: search.bestSteer,
    cells: search.cells,
  };
}

/** mm. No gap of a pair can be below this. */
export function floorOf(pair: MovingPair): number {
  return subjectOf(pair).floor;
}

function subjectOf(pair: MovingPair): Subject {
  if (pair.kind === "rod") return new RodSubject(pair);
  if (pair.kind === "springOrShock") return new SpringOrShockSubject(pair);
  return new PartSubject(pair.ring, pair.part);
}
