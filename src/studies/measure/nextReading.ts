import { thingRead } from "../../setup/blocks/readings/impossible.ts";
import type { Reading } from "../../setup/types/readingTypes.ts";
import type { Budget } from "../numeric/budget.ts";
import { type Ask, readingOf } from "./ask.ts";
import { baseOf, type Equation, pointsOf } from "./equations.ts";
import type { NextReading } from "./measured.ts";
import type { MeasureProblem } from "./measureProblem.ts";
import type { SolvedEquations } from "./solveEquations.ts";
import type { Unknowns } from "./unknowns.ts";

/** mm: derivatives are taken over this, to either side. */
const DIFFERENCE = 0.05;

/** Share by which a later candidate must help more than an earlier one. */
const BETTER = 1.02;

/** Share of the truck's uncertainty that a reading must take away to be worth asking for. */
const WORTH = 0.001;

/**
 * Of the candidates not read yet, the one that takes most of the variance of the truck's points (arms, steering and body):
 * a reading with slopes g and variance σ² takes |C g|² / (σ² + gᵀ C g) of the trace of C, over those points (the update of
 * recursive least squares). A point that is not read yet counts as far as it may be from the assumed layout.
 */
export function nextReading(
  { unknowns, maker }: MeasureProblem,
  { at, covariance }: SolvedEquations,
  candidates: readonly Ask[],
  readings: readonly Reading[],
  budget: Budget,
): NextReading | null {
  const read = new Set(readings.map(thingRead));
  const matters = unknowns.list.map(
    (unknown) =>
      unknown.kind !== "size" &&
      (unknown.point.includes("Arm.") ||
        unknown.point.startsWith("steering.") ||
        unknown.point.startsWith("body[")),
  );
  const total = matters.reduce((sum, isOne, i) => sum + (isOne ? covariance[i]![i]! : 0), 0);
  let best: { ask: Ask; takes: number; rows: readonly number[] } | null = null;
  for (const ask of candidates) {
    const reading = readingOf(ask, 0);
    if (read.has(thingRead(reading)) || !isKnown(reading, unknowns)) continue;
    const equations = maker.equationsOf(reading);
    if (budget.isSpent(at.length * equations.length)) break;
    const taken = equations.map((one) => takenBy(one, at, covariance));
    const rows = at.map((_, i) => (matters[i] ? taken.reduce((sum, one) => sum + one[i]!, 0) : 0));
    const takes = rows.reduce((sum, one) => sum + one, 0);
    if (takes > (best?.takes ?? WORTH * total) * (best ? BETTER : 1)) best = { ask, takes, rows };
  }
  if (best === null) return null;
  const count = matters.filter(Boolean).length / 3;
  const rms = (sum: number) => Math.sqrt(Math.max(0, sum) / count);
  const tells = mostTold(unknowns, covariance, best.rows);
  return { ask: best.ask, from: rms(total), to: rms(total - best.takes), tells };
}

/** The coordinate that a reading tells most of. @param rows variance that it takes from each unknown, mm² */
function mostTold(
  { list }: Unknowns,
  covariance: readonly (readonly number[])[],
  rows: readonly number[],
): NextReading["tells"] {
  const at = rows.indexOf(Math.max(...rows));
  const one = list[at];
  if (one === undefined || one.kind === "size") return null;
  const variance = covariance[at]![at]!;
  const to = Math.sqrt(Math.max(0, variance - rows[at]!));
  return { point: one.point, axis: one.axis, from: Math.sqrt(variance), to };
}

/** Whether all that a reading takes is there already: a candidate adds nothing to be solved for. */
function isKnown(reading: Reading, unknowns: Unknowns): boolean {
  if (reading.side === "right") return false;
  if (reading.kind === "size" && reading.of !== "track" && !unknowns.sizes().has(reading.of)) return false;
  if (reading.kind === "offset" && reading.from === "frame" && !unknowns.sizes().has("frameWidth"))
    return false;
  return pointsOf(reading).every((point) => unknowns.points().has(baseOf(point)));
}

/** The variance that an equation takes from each unknown, mm². */
function takenBy(
  { of, value, within }: Equation,
  at: readonly number[],
  covariance: readonly (readonly number[])[],
): readonly number[] {
  const slopes = of.map((i) => {
    const moved = (by: number) => value(at.map((one, k) => (k === i ? one + by : one)));
    return (moved(DIFFERENCE) - moved(-DIFFERENCE)) / (2 * DIFFERENCE);
  });
  const along = at.map((_, row) => of.reduce((sum, i, k) => sum + covariance[row]![i]! * slopes[k]!, 0));
  const variance = within ** 2 + of.reduce((sum, i, k) => sum + along[i]! * slopes[k]!, 0);
  return along.map((one) => (one * one) / variance);
}
