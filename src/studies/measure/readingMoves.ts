import type { Reading } from "../../setup/types/readingTypes.ts";
import { Budget } from "../numeric/budget.ts";
import { pointsFound, sizesFound } from "./found.ts";
import type { MeasuredTruck } from "./measured.ts";
import { type MeasureAsk, type MeasureProblem, problemOf, solveProblem } from "./measureProblem.ts";
import type { SolvedEquations } from "./solveEquations.ts";

/** What one number that was read does to the truck that all readings tell. */
export interface ReadingMove {
  readonly reading: Reading;
  /** Which of the numbers of a reading that gives several, from 0. */
  readonly part: number;
  /** The truck with that number so many standard deviations more, to first order. mm, vehicle axes. */
  readonly truckAt: (deviations: number) => MeasuredTruck;
}

/** mm. The step over which a reading's slope is taken: far below a tape's mark, far above rounding. */
const STEP = 1e-2;

/**
 * The truck as its readings tell it, and how it hangs on each of them, to first order: the errors of readings are independent of
 * each other, those of points are not. By the weighted least squares that `measureTruck` solves, δx = C · Jᵀ · z, with C what
 * readings tell of the covariance, J the slopes of the readings over their standard deviations, and z how far each is off in
 * those. Directions that no reading tells do not move.
 */
export function readingMoves(ask: MeasureAsk): {
  readonly measured: MeasuredTruck;
  readonly moves: readonly ReadingMove[];
} {
  const problem = problemOf(ask);
  const solved = solveProblem(problem, Budget.endless());
  const told = toldCovariance(problem, solved);
  const truckAt = (at: readonly number[]): MeasuredTruck => {
    const moved = { ...solved, at };
    return { points: pointsFound(problem, moved), sizes: sizesFound(problem.unknowns, moved) };
  };
  const parts = new Map<Reading, number>();
  const moves = problem.equations.map(({ reading, of, value, within }): ReadingMove => {
    const part = parts.get(reading) ?? 0;
    parts.set(reading, part + 1);
    const slopes = of.map((i) => {
      const beside = (by: number) => value(solved.at.map((x, k) => (k === i ? x + by : x)));
      return (beside(STEP) - beside(-STEP)) / (2 * STEP * within);
    });
    const along = told.map((row) => of.reduce((sum, i, k) => sum + row[i]! * slopes[k]!, 0));
    return {
      reading,
      part,
      truckAt: (deviations) => truckAt(solved.at.map((x, i) => x + deviations * along[i]!)),
    };
  });
  return { measured: truckAt(solved.at), moves };
}

/** The covariance without what is left of where each number began. */
function toldCovariance(
  { unknowns: { within } }: MeasureProblem,
  { covariance, open }: SolvedEquations,
): readonly (readonly number[])[] {
  return covariance.map((row, i) => row.map((value, k) => value - open[i]![k]! * within[i]! * within[k]!));
}
