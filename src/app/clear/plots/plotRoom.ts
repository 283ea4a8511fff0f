import type { LengthFormat } from "../../../units/formatLength.ts";
import {
  curveText,
  type Measure,
  type PlotSpec,
  perOf,
  plotOver,
  readText,
  sizeOf,
  slopeStep,
} from "../../parts/plotNumbers.ts";
import { STRAIGHT_AHEAD } from "./placeText.ts";

/** Where a curve has no number. */
export const NO_VALUE = "none here";

/** What is said of a value beside the band that is wanted. */
export const BAND_WORDS = {
  in: "✓ in the band",
  below: "✕ below the band",
  above: "✕ above the band",
} as const;

/** The most that numbers get to, but for a curve that runs off, in what a scale counts in; 8 is as wide as any digit. */
const MOST: Readonly<Record<Exclude<Measure, "length">, number>> = {
  angle: 88.88,
  turn: 88.8,
  lock: 88,
  ratio: 88.888,
  rate: 88888,
};
const LONGEST = { in: 88.888, mm: 888.88 } as const;
/** The same of what changes over an inch, 10 mm or a degree. */
const STEEPEST = { in: 8.888, mm: 88.88 } as const;

/** Heights in the fractions that a tape has. */
const HEIGHTS = { in: [8 + 15 / 16, 8 + 31 / 32, 8 + 63 / 64], mm: [888.8] } as const;

/**
 * Texts one of which is as wide as what a plot reads of a curve ever is. Room for them is kept: a line that breaks elsewhere while a
 * number changes would move all that is below.
 */
export function valueRoom({ y: { measure } }: PlotSpec, format: LengthFormat): readonly string[] {
  const { units } = format;
  const most = measure === "length" ? LONGEST[units] : MOST[measure];
  return [curveText(-most * sizeOf(measure, units), measure, format), NO_VALUE];
}

/** The same of its slope. */
export function slopeRoom(spec: PlotSpec, format: LengthFormat): readonly string[] {
  const { units } = format;
  const { measure } = spec.y;
  const most = measure === "length" ? STEEPEST[units] : MOST[measure];
  return [slopeStep((-most * sizeOf(measure, units)) / perOf(spec, format).size, spec, format)];
}

/** The same of the place that is read. */
export function placeRoom(spec: PlotSpec, format: LengthFormat): readonly string[] {
  const { measure } = spec.x;
  const { units } = format;
  const most =
    measure === "length" ? HEIGHTS[units] : measure === "lock" ? [MOST.lock, 100] : [MOST[measure]];
  const ahead = plotOver(spec) === "steer" ? [STRAIGHT_AHEAD] : [];
  return [...most.map((one) => readText(-one * sizeOf(measure, units), measure, format)), ...ahead];
}
