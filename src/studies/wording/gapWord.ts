/** What a gap means to the shop: it touches, it is nearer than the allowance, or it is neither. */
export type GapWord = "rubs" | "close" | "clear";

/** @param gap mm, negative = depth of interference; @param allowance mm the shop wants to keep */
export function gapWord(gap: number, allowance: number): GapWord {
  if (gap < 0) return "rubs";
  return gap < allowance ? "close" : "clear";
}
