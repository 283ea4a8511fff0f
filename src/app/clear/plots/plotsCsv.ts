import { csvGap, csvNumber } from "../../../units/csvRows.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { bareUnit } from "../../../units/quantity.ts";
import { type Measure, type PlotSpec, sizeOf } from "../../parts/plotNumbers.ts";

/**
 * What the plots show as CSV in long form: one line a point, what its numbers are in words with their units beside them; lengths in
 * `units`, angles in degrees, lock −1 … +1. A gap is never told as more than it is, as in every table of gaps.
 */
export function plotsCsv(plots: readonly PlotSpec[], units: FileUnits): string {
  const lines = ["plot,curve,along,at,unit of at,what,value,unit of value"];
  for (const { title, x, y, series, of } of plots) {
    for (const { name, points } of series) {
      for (const point of points) {
        const value = point.y === null ? "" : yCell(point.y, of === "gap", y.measure, units);
        lines.push(
          [
            quoted(title),
            quoted(name),
            quoted(x.label),
            bare(point.x, x.measure, units),
            unitOf(x.measure, units),
            quoted(y.label),
            value,
            unitOf(y.measure, units),
          ].join(","),
        );
      }
    }
  }
  return `${lines.join("\r\n")}\r\n`;
}

function yCell(value: number, isGap: boolean, measure: Measure, units: FileUnits): string {
  return isGap ? csvGap(value / sizeOf(measure, units), units) : bare(value, measure, units);
}

function bare(value: number, measure: Measure, units: FileUnits): string {
  const told = measure === "lock" ? value : value / sizeOf(measure, units);
  return csvNumber(told, measure === "length" ? units : "in");
}

function unitOf(measure: Measure, units: FileUnits): string {
  if (measure === "angle" || measure === "turn") return "deg";
  if (measure === "lock") return "of lock";
  if (measure === "ratio") return "per wheel travel";
  return measure === "rate" ? `${bareUnit("load", units)} per ${units}` : units;
}

/** RFC 4180: quotes doubled, and quotes around what holds a comma, a quote or a line's end. */
function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
