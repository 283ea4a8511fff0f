import { coordinatesOf, pointsFound, residualsOf, sizesFound } from "./found.ts";
import type { Measured } from "./measured.ts";
import { type MeasureAsk, problemOf, solveProblem } from "./measureProblem.ts";
import { nextReading } from "./nextReading.ts";
import { openWays } from "./openWays.ts";
import { suspectOf } from "./suspect.ts";

/**
 * The points of a truck by weighted least squares over its readings, left and right apart where both were read; what no
 * reading tells is of the setup or of an assumed layout, and says so. Any list of readings gives an answer, an empty one too.
 */
export function measureTruck(ask: MeasureAsk): Measured {
  const problem = problemOf(ask);
  const solved = solveProblem(problem);
  const { unknowns, equations } = problem;
  const coordinates = coordinatesOf(unknowns, solved);
  return {
    points: pointsFound(problem, solved),
    sizes: sizesFound(unknowns, solved),
    residuals: residualsOf(ask.readings, equations, solved),
    suspect: suspectOf(problem, solved),
    free: openWays(unknowns, solved),
    next: nextReading(problem, solved, ask.candidates, ask.readings),
    ...coordinates,
    isSettled: solved.isSettled,
  };
}
