import { scaleLinear } from "d3-scale";
import { withMinus } from "../../studies/wording/lengths.ts";
import { lockText } from "../../studies/wording/poseWords.ts";
import { degFromRad, formatAngle, radFromDeg } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";

/** What a plot's numbers are: lengths in mm, angles in radians, a share of full lock. */
export type Measure = "length" | "angle" | "lock";

/** One curve. `y` null = the linkage cannot go there, or there is no such number: the curve has a hole. */
export interface Series {
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly y: number | null }[];
  /** Broken like a drafter's second line: a curve of the other side, or of another variant. */
  readonly line: "solid" | "dashed" | "dotted";
  /** Drawn heavy, the others light. */
  readonly isMain: boolean;
}

export interface PlotSpec {
  readonly id: string;
  readonly title: string;
  /** What + means, or what the curve tells. */
  readonly note: string;
  readonly x: { readonly label: string; readonly measure: Measure };
  readonly y: { readonly label: string; readonly measure: Measure };
  readonly series: readonly Series[];
  /** Levels drawn across, with what they mean, such as touching. */
  readonly levels?: readonly { readonly at: number; readonly name: string }[];
}

/** Steps a tape has, in inches; finer than a sixteenth nobody reads off a plot. */
const INCH_STEPS = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 5, 10, 20, 50, 100];

/** Round values from `low` to `high` (mm, rad or share), about `count`, as their scale would carry them. */
export function ticksOf(
  low: number,
  high: number,
  count: number,
  measure: Measure,
  units: "in" | "mm",
): number[] {
  if (measure === "length" && units === "in") {
    const span = (high - low) / MM_PER_INCH;
    const step = INCH_STEPS.find((s) => span / s <= count) ?? INCH_STEPS.at(-1)!;
    const first = Math.ceil(low / MM_PER_INCH / step - 1e-9);
    const last = Math.floor(high / MM_PER_INCH / step + 1e-9);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step * MM_PER_INCH);
  }
  const one = measure === "angle" ? angleFromDegrees(1) : measure === "lock" ? 0.01 : 1;
  return scaleLinear([low / one, high / one], [0, 1])
    .ticks(count)
    .map((tick) => tick * one);
}

const angleFromDegrees = radFromDeg;

/** A plot's number as it is read out, with its unit. */
export function readText(value: number, measure: Measure, format: LengthFormat): string {
  if (measure === "angle") return withMinus(formatAngle(value, 2));
  if (measure === "lock") return lockText(value);
  return withMinus(formatLength(value, format));
}

/** The same as short as a scale's tick allows: no unit, it stands at the scale's name. */
export function tickText(value: number, measure: Measure, format: LengthFormat): string {
  if (measure === "angle") return withMinus(String(Number(degFromRad(value).toFixed(3))));
  if (measure === "lock") {
    const percent = Math.round(100 * value);
    return percent === 0 ? "0" : `${Math.abs(percent)} ${percent > 0 ? "L" : "R"}`;
  }
  return withMinus(formatLength(value, format).replace(/(\.0)? (in|mm)$/, ""));
}

/** The unit at a scale's name. */
export function unitText(measure: Measure, format: LengthFormat): string {
  if (measure === "angle") return "°";
  return measure === "lock" ? "% of lock" : format.units;
}
