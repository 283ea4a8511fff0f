import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { ASSUMED_LAYOUT, readCount } from "../../setup/worksheet/assumedLayout.ts";
import type { AnswerState, Doubt } from "../doubts/doubt.ts";
import { amountText, formatOf } from "./lengths.ts";

const HEADLINES: Readonly<Record<AnswerState, string>> = {
  rubs: "Rubs",
  close: "Close",
  clear: "Clears",
  unfinished: "Not finished",
  unusual: "Unusual",
  fromExample: "Clears, partly from the example",
  assumed: "Partly assumed",
};

const WORDS: Readonly<Record<AnswerState, string>> = {
  rubs: "rubs",
  close: "close",
  clear: "clears",
  unfinished: "not finished",
  unusual: "unusual, not confirmed",
  fromExample: "clears, partly from the example",
  assumed: "partly assumed",
};

/** What of a truck nobody has measured, over the doubt that tells how much of it. */
const NOT_MEASURED = { fromExample: "from the example", assumed: WORDS.assumed } as const;

/** Whose an answer is: of an example as it came it is the example's, and said as its. */
type AnswerOf = Pick<Setup, "fromExample">;

/** The one or few words over an answer. */
export function answerHeadline(state: AnswerState, of: AnswerOf): string {
  return isOfExample(state, of) ? "The example clears" : HEADLINES[state];
}

/** The same inside a line, next to its mark. */
export function answerWord(state: AnswerState, of: AnswerOf): string {
  return isOfExample(state, of) ? "the example clears" : WORDS[state];
}

/** Whether what is told is that an example clears, all of whose numbers are still its own. */
export function isOfExample(state: AnswerState, { fromExample }: AnswerOf): boolean {
  return state === "fromExample" && fromExample?.isAsItCame === true;
}

/**
 * The sentence of an answer, under its condition where the answer is withheld: `Everything clears: …` turns into `If what
 * is unusual is so, everything clears: …`.
 */
export function answerSentence(sentence: string, state: AnswerState, doubts: readonly Doubt[]): string {
  if (state !== "unusual" && state !== "fromExample" && state !== "assumed") return sentence;
  return `If ${conditionWords(doubts)}, ${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;
}

/**
 * Under what all that is said of trucks side by side holds, once for all of it: `All that is said here holds only if the
 * example's numbers are this truck's.`; where it is not one condition for all, a line of each truck in doubt.
 * @param told each truck's letter and what is in doubt of it, in order
 */
export function conditionLines(
  told: readonly { readonly letter: string; readonly doubts: readonly Doubt[] }[],
): readonly string[] {
  const conditions = told.map(({ doubts }) => conditionWords(doubts));
  const [shared = ""] = conditions;
  if (shared !== "" && conditions.every((words) => words === shared))
    return [`All that is said here holds only if ${shared}.`];
  return conditions.flatMap((words, i) =>
    words === "" ? [] : [`What is said of ${told[i]!.letter} holds only if ${words}.`],
  );
}

/** "" where nothing is in doubt. */
function conditionWords(doubts: readonly Doubt[]): string {
  return [
    doubts.some(({ kind }) => kind === "unusual") ? "what is unusual is right" : "",
    doubts.some(({ kind }) => kind === "fromExample") ? "the example's numbers are this truck's" : "",
    doubts.some(({ kind }) => kind === "assumed") ? "what is assumed is right" : "",
  ]
    .filter((words) => words !== "")
    .join(" and ");
}

/** What a study answered before its budget was spent. */
const REACHED = {
  check: "each gap given is real, and its tolerance says how much worse a pose that was not looked at may be",
  nearest: "each gap given is real, but a pose that was not looked at may be worse",
  limits: "what is in hand is proven as far as each bound says, and what is met first as far as it is told",
  ways: "how far it steers and how low it goes are proven as far as they are told",
  map: "cells marked ? were not looked at; how far it steers and how low it goes are proven as far as they are told",
  picture: "dotted places were not looked at",
  sweep: "the rows not looked at are left out",
  pose: "gaps not looked at are left out",
  envelope: "the surface is coarser than usual, as near as is said below",
  change: "changes not found in that time are left out",
  chart: "combinations marked ? were not worked out",
  odds: "fewer trucks were drawn, so the range is wider",
  window: "values not proven to fit in that time are left out",
  solve: "values not looked at in that time may also give what is wanted",
  section: "parts not looked at are left out",
  loads: "a pose that was not looked at may be worse",
  measure: "points are as near as they came, and the reading to doubt and the next one to take may change",
} as const;

/** Says that a study ended before it was through, what that means for its answer; `more` = how to have it search longer. */
export function cutShortSentence(study: keyof typeof REACHED | "noEnvelope" | "verdict", more = ""): string {
  // In one line with other things.
  if (study === "verdict")
    return `Not finished in the time allowed: another pose may be worse. ${more}`.trimEnd();
  if (study === "noEnvelope")
    return `The time allowed was not enough for the envelope: there is no surface yet. ${more}`.trimEnd();
  return `Not finished in the time allowed: ${REACHED[study]}. ${more}`.trimEnd();
}

/** Says that it searches longer, by itself or asked, and what holds until then. @param seconds at most */
export function longerWords(study: Parameters<typeof cutShortSentence>[0], seconds: number): string {
  const [, reached = ""] = /: (.*)$/.exec(cutShortSentence(study)) ?? [];
  return `Still searching, for up to ${Number(seconds.toPrecision(2))} s: ${reached}`;
}

/** A longer search that came to nothing: the answer beside it is the one before. */
export function longerEnded(failure: string): string {
  return `The longer search ended: ${failure}`;
}

/** What of a setup nobody has measured, as one doubt; none where every number is the truck's own. */
export function exampleDoubts(setup: Setup): readonly Doubt[] {
  const { fromExample } = setup;
  // What a knuckle is made of moves no gap: where nothing else is an example's, loads and drawings say so, and no verdict.
  const [first] = fromExample?.fields.filter(([block]) => block !== "build") ?? [];
  if (!fromExample || !first) return [];
  if (fromExample.of === ASSUMED_LAYOUT) return [{ kind: "assumed", path: first, text: assumedText(setup) }];
  const text = fromExample.isAsItCame
    ? `Invented example, “${fromExample.of}”: the answer is about it alone.`
    : `${countWords(fromExample.fields.length)} still the example's (“${fromExample.of}”), not measured on this truck.${builtOfText(fromExample.fields)}`;
  return [{ kind: "fromExample", path: first, text }];
}

/** A truck beside another, with what is in doubt of it. */
interface ToldBeside {
  readonly letter: string;
  readonly truck: { readonly setup: Setup };
  readonly doubts: readonly Doubt[];
}

/**
 * Two trucks side by side; where both are of one example, that is told of both in the same words: one as it came beside one with
 * another wheel would read as if the two differed in whose numbers they have.
 */
export function ofOneExample<T extends ToldBeside>(told: readonly T[]): readonly T[] {
  const text = oneExampleText(told);
  if (text === null) return told;
  return told.map((one) => ({
    ...one,
    doubts: one.doubts.map((doubt) => (doubt.kind === "fromExample" ? { ...doubt, text } : doubt)),
  }));
}

/** null = they are not of one example, or say the same of it already. */
function oneExampleText(told: readonly ToldBeside[]): string | null {
  const texts = told.map(({ doubts }) => doubts.find(({ kind }) => kind === "fromExample")?.text);
  const [first, second] = told.map(({ truck }) => truck.setup.fromExample);
  if (told.length !== 2 || !first || !second || first.of !== second.of) return null;
  if (texts.includes(undefined) || texts[0] === texts[1]) return null;
  if (first.isAsItCame || second.isAsItCame)
    return `Both are of the example “${first.of}”, an invented truck: the answers are about that truck alone.`;
  const [a, b] = told.map(({ letter }) => letter);
  return `Of ${a} ${first.fields.length} and of ${b} ${second.fields.length} numbers are still the example's (“${first.of}”), not measured on this truck.`;
}

/** What a verdict on a truck that is not measured all over rests on. */
function assumedText(setup: Setup): string {
  const { length } = setup.fromExample?.fields ?? [];
  const count = readCount(setup);
  const rest = `${length} number${length === 1 ? " is" : "s are"} still assumed, in whole or in part`;
  const out = setup.readingsLeftOut.length;
  const left =
    out === 0 ? "" : ` ${out === 1 ? "1 impossible reading is" : `${out} impossible readings are`} left out.`;
  return `From ${count} reading${count === 1 ? "" : "s"}; ${rest}: an invented layout, not measured on this truck.${travelText(setup)}${builtOfText(setup.fromExample?.fields ?? [])}${left}`;
}

/** How much of the count moves no gap. */
function builtOfText(fields: readonly KeyPath[]): string {
  const count = fields.filter(([block]) => block === "build").length;
  if (count === 0) return "";
  const numbers = count === 1 ? "1 of them is a size" : `${count} of them are sizes`;
  return ` ${numbers} of what the knuckle is built of: no gap moves with ${count === 1 ? "it" : "them"}.`;
}

/** Over the numbers of a knuckle's build, in a list of all that is an example's. */
export const BUILD_NUMBERS =
  "Sizes of pin, posts, plates, welds and studs. No gap moves with them, but drawings, weight and loads do.";

/** How far the wheel travels decides most, and no short list reads it: while it is assumed it is named. */
function travelText(setup: Setup): string {
  const assumed = (setup.fromExample?.fields ?? []).flatMap(([block, end]) =>
    block === "travel" ? [end] : [],
  );
  const { bump, droop } = setup.travel;
  const ends = [
    ...(assumed.includes("bump") ? [`${amountText(bump, formatOf(setup))} of bump`] : []),
    ...(assumed.includes("droop") ? [`${amountText(droop, formatOf(setup))} of droop`] : []),
  ];
  return ends.length === 0 ? "" : ` Assumed too is how far the wheel travels: ${ends.join(", ")}.`;
}

/** The same as a line for a terminal. @param file the file as the user named it */
export function exampleLine(file: string, setup: Setup): string | null {
  const [doubt] = exampleDoubts(setup);
  return doubt?.kind === "fromExample" || doubt?.kind === "assumed"
    ? `${file}: ${NOT_MEASURED[doubt.kind]}: ${doubt.text}`
    : null;
}

function countWords(count: number): string {
  return count === 1 ? "1 number is" : `${count} numbers are`;
}

/** As what a truck is shown, of its model's setup; null = it has no targets, so there is but one way it can stand. */
export function standingWords({ alignment }: Setup): string | null {
  const { targets, standing } = alignment;
  if (standing !== undefined) return standing.reached ? "aligned" : "aligned as near as its adjusters go";
  return targets === null ? null : "as bolted on";
}

/** Which setup a printed result is of, and whether as bolted on or aligned where that can differ. */
export function setupHeading(setup: Setup): string {
  const standing = standingWords(setup);
  const name = setup.variant === null ? setup.name : `${setup.name}, variant “${setup.variant}”`;
  return standing === null ? name : `${name}, ${standing}`;
}

/** How much is to be measured before there is an answer. */
export function needCount(needs: readonly KeyPath[]): string {
  if (needs.length === 0)
    return "Every number is in, but with these numbers the truck does not go together; what is wrong stands above.";
  return needs.length === 1 ? "It needs one thing more:" : `It needs ${needs.length} things, in this order:`;
}
