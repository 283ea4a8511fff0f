import type { KeyPath } from "../../setup/keyPath.ts";
import type { Verdict } from "../check.ts";

/** What can be doubted of an input: it is plausibly a slip; nobody has measured it on this truck. */
export type DoubtKind = "unusual" | "fromExample";

/** A reason not to draw an answer green: an input that may not be this truck's. */
export interface Doubt {
  readonly kind: DoubtKind;
  /** The field of the setup it is about. */
  readonly path: KeyPath;
  /** What is to be looked at again, in a sentence or two. */
  readonly text: string;
}

/** What an answer is shown as: the verdict, or what keeps it from being shown as clear. */
export type AnswerState = Verdict | DoubtKind;

/**
 * What a verdict is shown as while some inputs are in doubt: "clear" gives way, first to what is unusual. What rubs or is
 * close is told as it is: a doubt takes nothing off a warning.
 */
export function answerState(verdict: Verdict, doubts: readonly Pick<Doubt, "kind">[]): AnswerState {
  if (verdict !== "clear" || doubts.length === 0) return verdict;
  return doubts.some(({ kind }) => kind === "unusual") ? "unusual" : "fromExample";
}
