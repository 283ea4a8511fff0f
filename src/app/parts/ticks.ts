import { scaleLinear } from "d3-scale";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";
import type { Measure } from "./plotTypes.ts";
import { angleFromDegrees } from "./toRead.ts";

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
