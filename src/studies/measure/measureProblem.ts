import { bodyPointOf, TRUCK_POINTS } from "../../setup/blocks/readings/readingPoint.ts";
import type { PointName, Reading } from "../../setup/types/readingTypes.ts";
import type { Point } from "../../setup/types/truckTypes.ts";
import type { Budget } from "../numeric/budget.ts";
import type { Ask } from "./ask.ts";
import { ASSUMED_LIP_POINTS } from "./assumedTruck.ts";
import { type Equation, EquationMaker, pointsOf, pointsReadRight, type RimSizes } from "./equations.ts";
import { knuckleTies } from "./knuckleTies.ts";
import { type SolvedEquations, solveEquations } from "./solveEquations.ts";
import { startLayout } from "./startLayout.ts";
import { Unknowns } from "./unknowns.ts";

/** What a truck is measured from. mm and radians. */
export interface MeasureAsk {
  readonly readings: readonly Reading[];
  /** Points that the setup has already, by the names readings use. */
  readonly given: ReadonlyMap<PointName, Point>;
  readonly steering: "rack" | "pitman";
  /** The setup has body parts already; else a fender lip is assumed. */
  readonly hasBody: boolean;
  readonly rim: RimSizes;
  /** Readings that could be taken next, in the order a person would take them. */
  readonly candidates: readonly Ask[];
  /** Where the solving begins, by point; default the assumed layout, stretched by the readings. */
  readonly start?: ReadonlyMap<PointName, Point>;
}

/** The numbers, the equations and what came of them. */
export interface MeasureProblem {
  readonly unknowns: Unknowns;
  readonly maker: EquationMaker;
  readonly equations: readonly Equation[];
  readonly start: readonly number[];
}

/** Numbers every reading of a truck is put into. */
export function problemOf({ readings, given, steering, hasBody, rim, start }: MeasureAsk): MeasureProblem {
  const unknowns = new Unknowns(given);
  for (const point of TRUCK_POINTS)
    if (steering === "pitman" || !/^steering\.(pitman|idler)/.test(point)) unknowns.left(point);
  const maker = new EquationMaker(unknowns, pointsReadRight(readings), rim);
  const equations = readings.flatMap((reading) => maker.equationsOf(reading));
  if (!hasBody) for (const point of unreadLip(readings)) unknowns.left(point);
  const from = startLayout(unknowns, equations);
  return { unknowns, maker, equations, start: start ? startedAt(unknowns, from, start) : from };
}

/** Solves, with some equations left out, as far as the budget goes. */
export function solveProblem(
  { unknowns, equations, start }: MeasureProblem,
  budget: Budget,
  isKept: (equation: Equation) => boolean = () => true,
): SolvedEquations {
  const { within } = unknowns;
  return solveEquations(
    { equations: equations.filter(isKept), start, within, ties: knuckleTies(unknowns) },
    budget,
  );
}

/** Points of the assumed lip; none when the readings are of a lip with other points or of another part. */
function unreadLip(readings: readonly Reading[]): readonly PointName[] {
  const lip = [...ASSUMED_LIP_POINTS.keys()];
  const isOther = readings
    .flatMap(pointsOf)
    .some((name) => bodyPointOf(name) !== null && !lip.includes(name));
  return isOther ? [] : lip;
}

function startedAt(
  unknowns: Unknowns,
  from: readonly number[],
  start: ReadonlyMap<PointName, Point>,
): readonly number[] {
  const at = [...from];
  for (const [point, first] of unknowns.points())
    start.get(point)?.forEach((value, axis) => {
      at[first + axis] = value;
    });
  return at;
}
