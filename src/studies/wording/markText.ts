import type { LengthFormat } from "../../units/formatLength.ts";
import { amountText } from "./amountText.ts";
import type { GapWord } from "./gapWord.ts";

/** A gap as it is written on the picture: short, and with its word. */
export function markText(gap: number, word: GapWord, format: LengthFormat): string {
  const amount = amountText(gap, format, true);
  return word === "rubs" ? `rubs ${amount}` : word === "close" ? `close ${amount}` : amount;
}
