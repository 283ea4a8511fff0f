import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { CheckReport } from "../reports/check.ts";
import { decimalFormat, finestLength } from "./lengths.ts";
import { onSafeSide } from "./safeSide.ts";

/**
 * That a field does nothing to the worst gap, where all its values give the same as near as is proven: alike numbers would look as if
 * rounding hid a trend. null = it does, or too little is known.
 */
export function sameGapSentence(reports: readonly CheckReport[], format: LengthFormat): string | null {
  const worst = reports.flatMap((report) => (report.cutShort ? [] : (report.worst ?? [])));
  if (worst.length < 2 || worst.length < reports.length) return null;
  // Each gap is somewhere from what is proven to what was found.
  const within = Math.max(...worst.map(({ gap }) => gap)) - Math.min(...worst.map(({ bound }) => bound));
  if (within > Math.max(...worst.map(({ tolerance }) => tolerance))) return null;
  const shown = decimalFormat(format);
  const told = Math.max(finestLength(shown), onSafeSide(within, finestLength(shown), "up", 1e-9));
  return `The worst gap is the same within ${formatLength(told, shown)} at all ${worst.length} values: this field hardly moves it.`;
}
