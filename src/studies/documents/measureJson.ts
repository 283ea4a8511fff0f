import type { LengthUnit, SetupIssue } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { askDocument } from "../measure/ask.ts";
import { measureAskOf } from "../measure/measureAskOf.ts";
import type { Measured, MeasuredPoint, Suspect } from "../measure/measured.ts";
import { measureTruck } from "../measure/measureTruck.ts";
import { readingAt } from "../wording/measureWords.ts";
import { WORKSHEET_CANDIDATES } from "../worksheet/candidates.ts";
import { jsonText } from "./documentText.ts";

const AXES = ["x", "y", "z"] as const;

/**
 * What `measure --json` prints: lengths in the file's units, angles in degrees, places in vehicle axes (right side y < 0),
 * `within` one standard deviation, `covariance` in units squared. Readings by their place in the file's list, from 0; those
 * of `leftOut` cannot be. `cutShort` only where the budget ended it.
 */
export function measureJson(measured: Measured, leftOut: readonly SetupIssue[], units: LengthUnit) {
  const length = (mm: number) => unitsFromMm(mm, units);
  const amount = (kind: string, value: number) => (kind === "angle" ? degFromRad(value) : length(value));
  const right = new Map(
    measured.points.filter(({ side }) => side === "right").map((one) => [one.point, one]),
  );
  return {
    units,
    points: Object.fromEntries(
      measured.points
        .filter(({ side }) => side === "left")
        .map((left) => {
          const other = right.get(left.point);
          const plain = pointJson(left, units);
          return [left.point, other ? { ...plain, right: pointJson(other, units) } : plain];
        }),
    ),
    sizes: Object.fromEntries(
      measured.sizes.map(({ size, at, within }) => [size, { is: length(at), within: length(within) }]),
    ),
    residuals: measured.residuals.map(({ reading, off, inSigmas }) => ({
      reading: reading.index,
      off: amount(reading.kind, off),
      inSigmas,
    })),
    suspect: measured.suspect?.reading.index ?? null,
    withoutSuspect: measured.suspect && suspectJson(measured.suspect, units),
    free: measured.free.map(({ moves }) =>
      moves.map(({ point, side, axis, by }) => ({
        point,
        side,
        axis: AXES[axis],
        by: side === "right" && axis === 1 ? -by : by,
      })),
    ),
    next: measured.next && {
      reading: askDocument(measured.next.ask),
      pointsWithin: { now: length(measured.next.from), after: length(measured.next.to) },
    },
    leftOut: leftOut.map(({ key, value, mend }) => ({ reading: readingAt(key), key, value, mend })),
    ...(measured.cutShort ? { cutShort: true } : {}),
  };
}

function pointJson({ at, within, covariance, standing, side }: MeasuredPoint, units: LengthUnit) {
  const hand = (axis: number) => (side === "right" && axis === 1 ? -1 : 1);
  return {
    at: at.map((mm, axis) => hand(axis) * unitsFromMm(mm, units) + 0),
    within: within.map((mm) => unitsFromMm(mm, units)),
    covariance: covariance.map((row, i) =>
      row.map((value, k) => hand(i) * hand(k) * unitsFromMm(unitsFromMm(value, units), units) + 0),
    ),
    standing,
  };
}

function suspectJson({ reading, wouldBe, alike, without }: Suspect, units: LengthUnit) {
  const length = (mm: number) => unitsFromMm(mm, units);
  return {
    wouldBe: wouldBe === null ? null : reading.kind === "angle" ? degFromRad(wouldBe) : length(wouldBe),
    alike: alike.map(({ index }) => index),
    mostSigmas: without.mostSigmas,
    moves: without.moves.map(({ point, side, by: [x, y, z] }) => ({
      point,
      side,
      by: [length(x), (side === "right" ? -1 : 1) * length(y) + 0, length(z)],
    })),
  };
}

/**
 * What `measure --json` prints of a setup, letter for letter.
 * @param document as typed; @param variant null = none
 * @returns null where it has no readings that can be read
 */
export function measureText(document: unknown, variant: string | null): string | null {
  const { ask, units, issues, leftOut } = measureAskOf(document, "", variant, WORKSHEET_CANDIDATES);
  if (issues.length > 0 || ask === null || units === null || ask.readings.length === 0) return null;
  return jsonText(measureJson(measureTruck(ask), leftOut, units));
}
