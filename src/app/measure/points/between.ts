import { type FileUnits, MM_PER_INCH } from "../../../units/lengthUnits.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";

/**
 * A point on the line through two, as the file holds points: at `share` 0 the first, at 1 the second. Rounded to 1/16 in,
 * or in a file in millimeters to the millimeter. A coordinate that is no length is taken from the first.
 */
export function between(
  from: readonly unknown[],
  to: readonly unknown[],
  share: number,
  units: FileUnits,
): readonly unknown[] {
  const grid = units === "in" ? MM_PER_INCH / 16 : 1;
  return from.map((value, i) => {
    const [a, b] = [lengthOf(value, units), lengthOf(to[i], units)];
    if (a === null || b === null) return value;
    return plainLengthText(Math.round((a + share * (b - a)) / grid) * grid, units);
  });
}

function lengthOf(value: unknown, units: FileUnits): number | null {
  const length = typeof value === "number" || typeof value === "string" ? parseLength(value, units) : null;
  return length?.ok ? length.mm : null;
}
