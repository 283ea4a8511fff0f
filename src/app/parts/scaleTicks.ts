import { tickStep, ticks } from "d3-array";
import { withMinus } from "../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { type Measure, ticksOf, tickText } from "./plotNumbers.ts";

/** A mark of a scale and what is written at it. */
export interface Tick {
  readonly at: number;
  readonly text: string;
}

type Ends = readonly [from: number, to: number];

/** A straight scale: from values to places in a drawing, and back. */
export interface LinearScale {
  (value: number): number;
  invert(place: number): number;
  /** The place also of a value beyond the ends of a clamped scale. */
  free(value: number): number;
}

/** Leads `values` to `places`, straight; all to the middle where the values are one. @param isClamped stays between its ends, both ways */
export function linearScale(values: Ends, places: Ends, isClamped = false): LinearScale {
  const along = (at: number, from: Ends, to: Ends, clamped: boolean) => {
    const span = from[1] - from[0];
    const whole = span === 0 ? 0.5 : (at - from[0]) / span;
    const share = clamped ? Math.min(1, Math.max(0, whole)) : whole;
    return to[0] * (1 - share) + to[1] * share;
  };
  return Object.assign((value: number) => along(value, values, places, isClamped), {
    invert: (place: number) => along(place, places, values, isClamped),
    free: (value: number) => along(value, values, places, false),
  });
}

/** The finest step, in inches, at which fractions read well: finer ones are told in decimals. */
const FINEST_FRACTION = 1 / 4;

/** Steps of a scale in inches that are told as a tape has them. */
const TAPE_STEPS = [1 / 4, 1 / 2, 1, 2, 5, 10, 20, 50, 100];

/** Round marks from `low` to `high`, no more than about `count`; inches as a tape has them, in decimals where that is too fine. */
export function scaleTicks(
  low: number,
  high: number,
  count: number,
  measure: Measure,
  format: LengthFormat,
): Tick[] {
  if (measure === "length") return lengthTicks(low, high, count, format);
  return ticksOf(low, high, count, measure, format.units).map((at) => ({
    at,
    text: tickText(at, measure, format),
  }));
}

/** px between two marks of a scale across, at least, and what a letter of theirs takes. */
const APART = 31;
const LETTER = 6.1;

/** Round marks along a scale across the page, `room` px long: as many as have room for what is written at them. */
export function ticksAcross(
  low: number,
  high: number,
  room: number,
  measure: Measure,
  format: LengthFormat,
): Tick[] {
  for (let count = room / APART; ; count *= 0.8) {
    const ticks = scaleTicks(low, high, count, measure, format);
    const [first, second] = ticks;
    if (first === undefined || second === undefined) return ticks;
    const widest = LETTER * (1 + Math.max(...ticks.map(({ text }) => text.length)));
    if ((room * (second.at - first.at)) / (high - low) >= widest) return ticks;
  }
}

function lengthTicks(low: number, high: number, count: number, format: LengthFormat): Tick[] {
  const size = format.units === "in" ? MM_PER_INCH : 1;
  const span = (high - low) / size;
  const step = TAPE_STEPS.find((one) => span / one <= count);
  if (
    format.units === "in" &&
    format.fraction !== "decimal" &&
    step !== undefined &&
    span / FINEST_FRACTION > count / 2
  ) {
    const first = Math.ceil(low / size / step - 1e-9);
    const last = Math.floor(high / size / step + 1e-9);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
      const at = (first + i) * step * size;
      return { at, text: tickText(at, "length", format) };
    });
  }
  const decimals = Math.max(0, -Math.floor(Math.log10(tickStep(low / size, high / size, count)) + 1e-9));
  return ticks(low / size, high / size, count).map((value) => ({
    at: value * size,
    text: withMinus(value.toFixed(decimals)),
  }));
}
