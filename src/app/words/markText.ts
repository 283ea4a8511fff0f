import type { Setup } from "../../setup/types.ts";
import { amountText } from "./amountText.ts";
import type { GapWord } from "./gapWord.ts";

/** A gap as it is written on the picture: short, and with its word. */
export function markText(gap: number, word: GapWord, setup: Setup): string {
  const amount = amountText(gap, setup, true);
  return word === "rubs" ? `rubs ${amount}` : word === "close" ? `close ${amount}` : amount;
}
