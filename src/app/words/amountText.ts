import type { Setup } from "../../setup/types.ts";
import { amountWords } from "../../studies/sentenceAmount.ts";

/**
 * How long, without the sign, in the setup's own units as a tape reads it. What would round to nothing reads
 * "less than 1/16 in", or "< 1/16 in" where there is little room.
 */
export function amountText(mm: number, setup: Setup, isShort = false): string {
  const words = amountWords(mm, { units: setup.units, fraction: 16 });
  return isShort ? words.replace("less than ", "< ") : words;
}
