import type { LengthFormat } from "../../units/formatLength.ts";
import { amountWords } from "./amountWords.ts";

/**
 * How long, without the sign, as a tape reads it, in the units shown. What would round to nothing reads
 * "less than 1/16 in", or "< 1/16 in" where there is little room.
 */
export function amountText(mm: number, format: LengthFormat, isShort = false): string {
  const words = amountWords(mm, format);
  return isShort ? words.replace("less than ", "< ") : words;
}
