import type { AnswerState, Doubt } from "../doubts/doubt.ts";

const HEADLINES: Readonly<Record<AnswerState, string>> = {
  rubs: "Rubs",
  close: "Close",
  clear: "Clears",
  unfinished: "Not finished",
  unusual: "Unusual",
  fromExample: "From the example",
};

const WORDS: Readonly<Record<AnswerState, string>> = {
  rubs: "rubs",
  close: "close",
  clear: "clears",
  unfinished: "not finished",
  unusual: "unusual, not confirmed",
  fromExample: "from the example",
};

/** The one or few words over an answer. */
export function answerHeadline(state: AnswerState): string {
  return HEADLINES[state];
}

/** The same inside a line, next to its mark. */
export function answerWord(state: AnswerState): string {
  return WORDS[state];
}

/**
 * The sentence of an answer, under its condition where the answer is withheld: `Everything clears: …` turns into `If what
 * is unusual is so, everything clears: …`.
 */
export function answerSentence(sentence: string, state: AnswerState, doubts: readonly Doubt[]): string {
  if (state !== "unusual" && state !== "fromExample") return sentence;
  return `If ${conditionWords(doubts)}, ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;
}

/**
 * A sentence of several trucks' clauses, each under the condition that nothing in doubt of its truck is wrong; one that
 * they all share is said once, in front. @param sentence makes it of the clauses @param doubts of each clause, in order
 */
export function conditionedSentence(
  clauses: readonly string[],
  doubts: readonly (readonly Doubt[])[],
  sentence: (clauses: readonly string[]) => string,
): string {
  const conditions = doubts.map(conditionWords);
  const shared = conditions.every((words) => words === conditions[0]) ? (conditions[0] ?? "") : "";
  if (shared !== "") {
    const whole = sentence(clauses);
    return `If ${shared}: ${whole.charAt(0).toLowerCase()}${whole.slice(1)}`;
  }
  return sentence(
    clauses.map((clause, i) => (conditions[i] === "" ? clause : `if ${conditions[i]}, ${clause}`)),
  );
}

/** "" where nothing is in doubt. */
function conditionWords(doubts: readonly Doubt[]): string {
  return [
    doubts.some(({ kind }) => kind === "unusual") ? "what is unusual is so" : "",
    doubts.some(({ kind }) => kind === "fromExample") ? "the example's numbers are this truck's" : "",
  ]
    .filter((words) => words !== "")
    .join(" and ");
}
