import { Budget } from "../numeric/budget.ts";
import { coordinatesOf, pointsFound, residualsOf, sizesFound } from "./found.ts";
import type { Measured } from "./measured.ts";
import { type MeasureAsk, problemOf, solveProblem } from "./measureProblem.ts";
import { nextReading } from "./nextReading.ts";
import { openWays } from "./openWays.ts";
import { suspectOf } from "./suspect.ts";

/**
 * The points of a truck by weighted least squares over its readings, left and right apart where both were read; what no
 * reading tells is of the setup or of an assumed layout, and says so. Any list of readings gives an answer, an empty one too.
 * @param budget once it is spent the points stay as near as they came, and what was not looked for is not named
 */
export function measureTruck(ask: MeasureAsk, budget: Budget = Budget.endless()): Measured {
  const problem = problemOf(ask);
  const solved = solveProblem(problem, budget);
  const { unknowns, equations } = problem;
  const coordinates = coordinatesOf(unknowns, solved);
  const found = {
    points: pointsFound(problem, solved),
    sizes: sizesFound(unknowns, solved),
    residuals: residualsOf(ask.readings, equations, solved),
    suspect: suspectOf(problem, solved, budget),
    free: openWays(unknowns, solved),
    next: nextReading(problem, solved, ask.candidates, ask.readings, budget),
    ...coordinates,
    isSettled: solved.isSettled,
  };
  return budget.cut ? { ...found, cutShort: true } : found;
}
