import type { Setup } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { type AnswerState, answerState, type Doubt } from "../doubts/doubt.ts";
import type { Model } from "../model/model.ts";
import { type CheckReport, type Verdict, verdictOf } from "../reports/check.ts";
import { answerWord, isOfExample } from "./answerWords.ts";
import { amountText } from "./lengths.ts";
import { type ToldEntry, verdictFacts } from "./verdictFacts.ts";

/** What a gap means to the shop: it touches, it is nearer than the allowance, or it is neither. */
export type GapWord = Verdict;

/** The verdict of a gap at one pose, where nothing is left to prove. @param allowance mm the shop wants to keep */
export function gapWord(gap: number, allowance: number): GapWord {
  return verdictOf(gap, gap, allowance);
}

/** What stands before an amount: `rubs by`, `close`, `clear`; of an entry that is close for want of proof `not proven`. */
export function amountWord(word: Verdict, isOpen = false): string {
  switch (word) {
    case "rubs":
      return "rubs by";
    case "close":
      return isOpen ? "not proven" : "close";
    case "clear":
      return "clear";
  }
}

/** A gap as it is written on the picture: short, and with its word. */
export function markText(gap: number, word: GapWord, format: LengthFormat, isOpen = false): string {
  const amount = amountText(gap, format, true);
  switch (word) {
    case "rubs":
      return `rubs ${amount}`;
    case "close":
      return `${isOpen ? "not proven" : "close"} ${amount}`;
    case "clear":
      return amount;
  }
}

/** What one truck comes nearest to over the whole range, in a cell. */
export interface WorstFacts {
  readonly state: AnswerState;
  /** null when nothing is measured. */
  readonly told: ToldEntry | null;
}

export function worstFacts(report: CheckReport, model: Model, doubts: readonly Doubt[]): WorstFacts {
  return { state: answerState(report, doubts), told: verdictFacts(report, model).told };
}

/** The cell's word and amount: `rubs by 1/4 in`; what it is to is told beside it. */
export function worstFactsText(
  { state, told }: WorstFacts,
  setup: Pick<Setup, "fromExample">,
  format: LengthFormat,
): string {
  if (told === null) return "nothing is measured";
  const amount = amountText(told.entry.gap, format, true);
  switch (state) {
    case "rubs":
      return `rubs by ${amount}`;
    case "close":
      return `close ${amount}`;
    case "clear":
      return `${answerWord(state, setup)} by ${amount}`;
    case "unfinished":
      return `${answerWord(state, setup)}, so far ${amount}`;
    case "unusual":
    case "fromExample":
    case "assumed":
      return `${answerWord(state, setup)}${isOfExample(state, setup) ? " by" : ":"} ${amount}`;
  }
}

/** A gap at the pose shown: a rub says so in words, however light it is. */
export function nowText(gap: number, format: LengthFormat): string {
  return markText(gap, gap < 0 ? "rubs" : "clear", format);
}
