import { type Verdict, verdictOf } from "../reports/check.ts";

/** What a gap means to the shop: it touches, it is nearer than the allowance, or it is neither. */
export type GapWord = Verdict;

/** The verdict of a gap at one pose, where nothing is left to prove. @param allowance mm the shop wants to keep */
export function gapWord(gap: number, allowance: number): GapWord {
  return verdictOf(gap, gap, allowance);
}

/** What stands before an amount: `rubs by`, `close`, `clear`. */
export function amountWord(word: Verdict): string {
  switch (word) {
    case "rubs":
      return "rubs by";
    case "close":
      return "close";
    case "clear":
      return "clear";
  }
}
