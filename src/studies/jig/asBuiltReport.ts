import type { KnuckleReadings, ReadingKey } from "../../setup/types/asBuiltTypes.ts";
import type { KnuckleSetup, Setup } from "../../setup/types/types.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { type AsBuiltTruckResult, asBuiltTruck } from "./asBuiltTruck.ts";
import { type Corrections, correctionsOf } from "./corrections.ts";
import { type FittedKnuckle, fitKnuckle } from "./fitKnuckle.ts";
import { clampHeight, jigReadingsOf } from "./jigReadings.ts";
import { type JigRow, jigRows, orderedKnuckle } from "./jigSheet.ts";

/** A reading beside what the sheet asks for. mm and radians. */
export interface ReadingPass extends JigRow {
  readonly is: number;
  /** is − must read. */
  readonly off: number;
  readonly passes: boolean;
}

/** One knuckle as its readings tell it. */
export interface AsBuiltSide {
  readonly side: Side;
  readonly fit: FittedKnuckle;
  readonly passes: readonly ReadingPass[];
  /** Every reading passes. */
  readonly allPass: boolean;
  readonly corrections: Corrections;
}

/** Both knuckles; null = nothing was read on that side. */
export type AsBuiltSides = Readonly<Record<Side, AsBuiltSide | null>>;

/** mm and rad. A reading right on its tolerance passes, however it was rounded. */
const ON_TOLERANCE = 1e-9;

/** What the readings of a setup tell; null = it has none. */
export function asBuiltSides(setup: Pick<Setup, "knuckle" | "jig" | "asBuilt">): AsBuiltSides | null {
  const { asBuilt } = setup;
  if (asBuilt === null) return null;
  const { left, right } = asBuilt;
  return { left: left && sideOf("left", left, setup), right: right && sideOf("right", right, setup) };
}

function sideOf(
  side: Side,
  { readings, clampedAt }: KnuckleReadings,
  setup: Pick<Setup, "knuckle" | "jig" | "asBuilt">,
): AsBuiltSide {
  const { jig, asBuilt } = setup;
  const ordered = orderedKnuckle(setup);
  const clamped = clampHeight(clampedAt, ordered, jig);
  const is = withDifference(readings);
  const passes = jigRows(jigReadingsOf(ordered, jig, clamped), jig.tolerances).flatMap(
    (row): ReadingPass[] => {
      const value = is[row.key];
      if (value === undefined) return [];
      const off = value - row.mustRead;
      return [{ ...row, is: value, off, passes: Math.abs(off) <= row.tolerance + ON_TOLERANCE }];
    },
  );
  const fit = fitKnuckle(readings, clamped, jig, asBuilt!.within, ordered);
  return {
    side,
    fit,
    passes,
    allPass: passes.every((row) => row.passes),
    corrections: correctionsOf(passes, fit, ordered, clamped, jig),
  };
}

/** What was read of a line of the sheet; null = nothing. */
export function asBuiltRead(
  { asBuilt }: Pick<Setup, "asBuilt">,
  side: Side,
  key: JigRow["key"],
): number | null {
  const read = asBuilt?.[side];
  return (read && withDifference(read.readings)[key]) ?? null;
}

function withDifference(
  readings: KnuckleReadings["readings"],
): Partial<Record<ReadingKey | "difference", number>> {
  const { front, behind } = readings;
  if (front === undefined || behind === undefined) return readings;
  return { ...readings, difference: behind - front };
}

/** Readings that are missing on a side whose readings leave every dimension open; null = it tells something, or was not read. */
export function tellsNothing(
  setup: Pick<Setup, "knuckle" | "jig" | "asBuilt">,
  side: Side,
): readonly ReadingKey[] | null {
  const read = asBuiltSides(setup)?.[side] ?? null;
  if (read === null || Object.values(read.fit.within).some((within) => within !== null)) return null;
  return read.fit.missing;
}

/** The knuckles to put on the truck: a side that was not read is as ordered. */
export function builtKnuckles(
  { knuckle }: Pick<Setup, "knuckle">,
  sides: AsBuiltSides,
): Readonly<Record<Side, KnuckleSetup>> {
  const of = (side: AsBuiltSide | null): KnuckleSetup => {
    if (side === null) return knuckle;
    const { toe: _, ...own } = side.fit.knuckle;
    return own;
  };
  return { left: of(sides.left), right: of(sides.right) };
}

/** Both knuckles as read, and what they do on the truck; null = nothing was read. */
export interface AsBuiltReport {
  readonly sides: AsBuiltSides;
  readonly onTheTruck: AsBuiltTruckResult;
  readonly cutShort?: true;
}

/**
 * @param bolted the truck on the knuckle as ordered, as bolted on; @param file for the issues
 * @param isAligned the truck aligned to its targets on either knuckle; default as bolted on
 */
export function asBuiltReport(
  bolted: Model,
  file: string,
  budget: Budget,
  isAligned = false,
): AsBuiltReport | null {
  const sides = asBuiltSides(bolted.setup);
  if (sides === null) return null;
  const knuckles = builtKnuckles(bolted.setup, sides);
  const fits = { left: sides.left?.fit ?? null, right: sides.right?.fit ?? null };
  const onTheTruck = asBuiltTruck(bolted, { knuckles, fits, file, isAligned }, budget);
  const isCut = onTheTruck.ok && (onTheTruck.asOrdered.check.cutShort || onTheTruck.asBuilt.check.cutShort);
  return { sides, onTheTruck, ...(isCut ? { cutShort: true } : {}) };
}
