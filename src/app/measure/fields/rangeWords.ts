import type { SetupField } from "../../../setup/fields/setupField.ts";
import { MAX_LENGTH } from "../../../setup/reading/limits.ts";
import { withMinus } from "../../../studies/wording/withMinus.ts";
import { formatLength, type LengthFormat } from "../../../units/formatLength.ts";

/** What a field may hold, in words: `more than 0 in`, `between −45° and 45°`; null where anything of its sort goes. */
export function rangeWords({ kind, range }: SetupField, format: LengthFormat): string | null {
  const isLength = kind === "length" || kind === "signedLength";
  const told = (value: number) =>
    withMinus(isLength ? formatLength(value, format) : kind === "angle" ? `${value}°` : String(value));
  // Ends that only keep slips of the hand out say nothing.
  const isFar = (end: number | null) => end === null || Math.abs(end) >= (isLength ? MAX_LENGTH : 1e9);
  const least = isFar(range.least) ? null : range.least;
  const most = isFar(range.most) ? null : range.most;
  if (least !== null && most !== null) return `between ${told(least)} and ${told(most)}`;
  if (least !== null) return range.leastExcluded ? `more than ${told(least)}` : `${told(least)} or more`;
  if (most !== null) return range.mostExcluded ? `less than ${told(most)}` : `${told(most)} or less`;
  return null;
}
