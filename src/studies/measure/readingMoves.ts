import type { PointName, Reading } from "../../setup/types/readingTypes.ts";
import { Budget } from "../numeric/budget.ts";
import { type MeasureAsk, type MeasureProblem, problemOf, solveProblem } from "./measureProblem.ts";
import type { SolvedEquations } from "./solveEquations.ts";
import type { Axis } from "./unknowns.ts";

/** What one standard deviation of one number that was read does to the left side's points. mm, vehicle axes. */
export interface ReadingMove {
  readonly reading: Reading;
  /** Which of the numbers of a reading that gives several, from 0. */
  readonly part: number;
  readonly moves: readonly { readonly point: PointName; readonly axis: Axis; readonly by: number }[];
}

/** A left point as readings tell it. mm. */
export interface PointRead {
  readonly point: PointName;
  readonly at: readonly number[];
}

/** mm. What moves less is rounding. */
const LEAST = 1e-4;

/** mm. The step over which a reading's slope is taken: far below a tape's mark, far above rounding. */
const STEP = 1e-2;

/**
 * How the points of a truck hang on each of its readings, to first order: the errors of readings are independent of each other,
 * those of points are not. By the weighted least squares that `measureTruck` solves, δx = C · Jᵀ · z, with C what readings tell of
 * the covariance, J the slopes of the readings over their standard deviations, and z how far each is off in those. Directions
 * that no reading tells do not move.
 */
export function readingMoves(ask: MeasureAsk): {
  readonly points: readonly PointRead[];
  readonly moves: readonly ReadingMove[];
} {
  const problem = problemOf(ask);
  const solved = solveProblem(problem, Budget.endless());
  const told = toldCovariance(problem, solved);
  const rows = [...problem.unknowns.points()].flatMap(([point, first]) =>
    ([0, 1, 2] as const).map((axis) => ({ point, axis, row: first + axis })),
  );
  const parts = new Map<Reading, number>();
  const moves = problem.equations.map(({ reading, of, value, within }): ReadingMove => {
    const part = parts.get(reading) ?? 0;
    parts.set(reading, part + 1);
    const slopes = of.map((i) => {
      const beside = (by: number) => value(solved.at.map((x, k) => (k === i ? x + by : x)));
      return (beside(STEP) - beside(-STEP)) / (2 * STEP * within);
    });
    const found = rows.map(({ point, axis, row }) => ({
      point,
      axis,
      by: of.reduce((sum, i, k) => sum + told[row]![i]! * slopes[k]!, 0),
    }));
    return { reading, part, moves: found.filter(({ by }) => Math.abs(by) > LEAST) };
  });
  const points = [...problem.unknowns.points()].map(([point, first]) => ({
    point,
    at: solved.at.slice(first, first + 3),
  }));
  return { points, moves };
}

/** The covariance without what is left of where each number began. */
function toldCovariance(
  { unknowns: { within } }: MeasureProblem,
  { covariance, open }: SolvedEquations,
): readonly (readonly number[])[] {
  return covariance.map((row, i) => row.map((value, k) => value - open[i]![k]! * within[i]! * within[k]!));
}
