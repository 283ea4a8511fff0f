import { ticks } from "d3-array";
import { withMinus } from "../../studies/wording/lengths.ts";
import { lockText } from "../../studies/wording/poseWords.ts";
import { degFromRad, formatAngle, radFromDeg } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import { bareUnit, quantityInUnits } from "../../units/quantity.ts";

/**
 * What a plot's numbers are: lengths in mm, angles in radians, a share of full lock, an angle with the way of the turn
 * (+ = left), a plain ratio, a rate in N/mm.
 */
export type Measure = "length" | "angle" | "lock" | "turn" | "ratio" | "rate";

/** How curves are drawn that are laid over each other, apart by color and mark too; the first is what the others are held against. */
export const LINES = ["solid", "dashed", "dotted", "chained", "long"] as const;

/** One curve. `y` null = the linkage cannot go there, or there is no such number: the curve has a hole. */
export interface Series {
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly y: number | null }[];
  /** Broken like a drafter's second line: a curve of the other side, or of another variant. */
  readonly line: (typeof LINES)[number];
  /** Drawn heavy, the others light. */
  readonly isMain: boolean;
  /** Which of the things laid over each other it is of: sets color and mark. Default its place in the list. */
  readonly of?: number;
  /** The value at any x, exactly. Default straight between the points. */
  readonly read?: (x: number) => number | null;
}

/** What a plot's x scale runs over; `toInput` leads from the scale to travel (mm), steer or roll (rad), `fromInput` back. */
export interface PlotAxis {
  readonly label: string;
  /** The same where there is no room for it. Default the label. */
  readonly brief?: string;
  readonly measure: Measure;
  /** Default `steer` for a share of lock, else `travel`. */
  readonly over?: PlotOver;
  readonly toInput?: (x: number) => number;
  readonly fromInput?: (input: number) => number;
}

/** What changes along a plot: wheel travel, the steering input, or the body's roll. */
export type PlotOver = "travel" | "steer" | "roll";

export interface PlotSpec {
  readonly id: string;
  readonly title: string;
  /** What + means, or what the curve tells. */
  readonly note: string;
  /** Where the pose stands beside its x, such as `straight ahead`; the note says it too. */
  readonly stands?: string;
  readonly x: PlotAxis;
  readonly y: {
    readonly label: string;
    readonly measure: Measure;
    /** Some curves run off to infinity: the scale holds what most of them do. */
    readonly isWild?: boolean;
  };
  readonly series: readonly Series[];
  /** Its name among the definitions. */
  readonly of?: string;
  /** What the slope of a curve is called, such as `camber gain`; told where the x scale is travel or roll. */
  readonly slope?: string;
  /** Levels drawn across, with what they mean, such as touching. */
  readonly levels?: readonly { readonly at: number; readonly name: string }[];
}

/** What a plot runs over. */
export function plotOver({ x }: PlotSpec): PlotOver {
  return x.over ?? (x.measure === "lock" ? "steer" : "travel");
}

/** Steps a tape has, in inches; finer than a sixteenth nobody reads off a map. */
const INCH_STEPS = [1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 5, 10, 20, 50, 100];

/** Round values from `low` to `high` (mm, rad or share), about `count`, as a tape or their scale would carry them. */
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
  const one = sizeOf(measure, units);
  return ticks(low / one, high / one, count).map((tick) => tick * one);
}

/** How large the unit is that a scale counts in: mm, radians, a share, N/mm. */
export function sizeOf(measure: Measure, units: "in" | "mm"): number {
  if (measure === "angle" || measure === "turn") return radFromDeg(1);
  if (measure === "lock") return 0.01;
  if (measure === "rate") return 1 / ratePerUnit(1, units);
  return measure === "length" && units === "in" ? MM_PER_INCH : 1;
}

/** N/mm in load units per length unit. */
function ratePerUnit(rate: number, units: "in" | "mm"): number {
  return quantityInUnits(rate, "load", units) * (units === "in" ? MM_PER_INCH : 1);
}

/** A plot's number as it is read out, with its unit. */
export function readText(value: number, measure: Measure, format: LengthFormat): string {
  const { units } = format;
  if (measure === "angle") return withMinus(formatAngle(value, 2));
  if (measure === "lock") return lockText(value);
  if (measure === "turn") return turnText(value, 1);
  if (measure === "ratio") return withMinus(value.toFixed(3));
  if (measure === "rate")
    return withMinus(`${Math.round(ratePerUnit(value, units))} ${unitText(measure, format)}`);
  return withMinus(formatLength(value, format));
}

/** The same as short as a scale's tick allows: no unit, it stands at the scale's name. */
export function tickText(value: number, measure: Measure, format: LengthFormat): string {
  if (measure === "lock") {
    const percent = Math.round(100 * value);
    return percent === 0 ? "0" : `${Math.abs(percent)} ${percent > 0 ? "L" : "R"}`;
  }
  if (measure === "length") return withMinus(formatLength(value, format).replace(/(\.0)? (in|mm)$/, ""));
  if (measure === "turn") return turnText(value, 0).replace("°", "");
  return withMinus(String(Number((value / sizeOf(measure, format.units)).toFixed(3))));
}

/** `20° L`, `20° R`, `0°`. */
function turnText(value: number, decimals: number): string {
  const text = Math.abs(degFromRad(value)).toFixed(decimals);
  return Number(text) === 0 ? "0°" : `${Number(text)}° ${value > 0 ? "L" : "R"}`;
}

/** The unit at a scale's name. */
export function unitText(measure: Measure, { units }: LengthFormat): string {
  if (measure === "angle" || measure === "turn") return "°";
  if (measure === "lock") return "% of lock";
  if (measure === "ratio") return "per wheel travel";
  return measure === "rate" ? `${bareUnit("load", units)}/${units}` : units;
}

/** Decimals in which a plot reads a length out: what a curve does is finer than a tape. */
const DECIMALS = { in: 3, mm: 2 } as const;

/** A plot's own reading of a curve: as `readText`, but lengths in decimals, which show what a curve does. */
export function curveText(value: number, measure: Measure, format: LengthFormat): string {
  if (measure !== "length") return readText(value, measure, format);
  const { units } = format;
  return withMinus(formatLength(value, { units, fraction: "decimal", decimals: DECIMALS[units] }));
}

/** Travel over which slopes are told, mm, and what that is called. */
const PER = { in: { size: MM_PER_INCH, name: "in" }, mm: { size: 10, name: "10 mm" } } as const;

/**
 * A slope as it is read out, without what it is over (`slopePer`): `−0.512°`, `0.031 in`.
 * @param slope of a curve in its own units per x in its own
 */
export function slopeStep(slope: number, spec: PlotSpec, format: LengthFormat): string {
  const step = slope * perOf(spec, format).size;
  const { measure } = spec.y;
  const value =
    measure === "angle"
      ? `${degFromRad(step).toFixed(3)}°`
      : measure === "length"
        ? curveText(step, measure, format).replace("−", "-")
        : readText(step, measure, format).replace("−", "-");
  return withMinus(value.replace(/^-(0(\.0+)?)(?![\d.])/, "$1"));
}

/** Over what slopes are told: `per in`, `per °`. */
export function slopePer(spec: PlotSpec, format: LengthFormat): string {
  return `per ${perOf(spec, format).name}`;
}

/** The same as a size, mm or radians. */
export function perOf(
  spec: PlotSpec,
  { units }: LengthFormat,
): { readonly size: number; readonly name: string } {
  return plotOver(spec) === "roll" ? { size: radFromDeg(1), name: "°" } : PER[units];
}
