import { amountText } from "../../../studies/wording/amountText.ts";
import { type GapWord, gapWord } from "../../../studies/wording/gapWord.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";

/** mm. A gap this small, or as deep, is where two things just touch. */
const JUST = 0.05;

/** A gap as a drawing tells it. */
export interface GapLabel {
  readonly word: GapWord;
  /** The word that is written. */
  readonly said: string;
  /** How much; "" where they just touch. */
  readonly amount: string;
}

/** A gap on a drawing: what it means, and the few words beside it. @param gap, allowance mm */
export function gapLabel(gap: number, allowance: number, format: LengthFormat): GapLabel {
  if (Math.abs(gap) < JUST) return { word: "rubs", said: "touches", amount: "" };
  const word = gapWord(gap, allowance);
  return { word, said: word, amount: amountText(gap, format, true) };
}
