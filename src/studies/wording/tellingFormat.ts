import type { LengthFormat } from "../../units/formatLength.ts";
import { isFoundAlike } from "./lengths.ts";

/** Digits after the point where fractions hide a trend: as fine as a search is. */
const DECIMALS = { in: 3, mm: 2 } as const;

/**
 * The format in which numbers side by side tell that they differ: the one given, or decimals where two that differ read the same.
 * @param values mm @param text as one of them stands there
 */
export function tellingFormat(
  values: readonly number[],
  text: (value: number, format: LengthFormat) => string,
  format: LengthFormat,
): LengthFormat {
  const sorted = [...values].sort((a, b) => a - b);
  const hides = sorted.some((value, i) => {
    const next = sorted[i + 1];
    return (
      next !== undefined && !isFoundAlike(value, next, "length") && text(value, format) === text(next, format)
    );
  });
  const { units } = format;
  return hides ? { units, fraction: "decimal", decimals: DECIMALS[units] } : format;
}
