import { type KeyPath, parseKeyText, valueAt } from "../../setup/types/keyPath.ts";
import type { Setup } from "../../setup/types/types.ts";
import { ASSUMED_LAYOUT, isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { LIP, type ReadingAsk } from "../../setup/worksheet/worksheetLines.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { OddsInput, WithinSource } from "../odds/oddsInputs.ts";
import type { OddsReport } from "../odds/oddsOf.ts";
import type { Matter } from "../odds/whatMatters.ts";
import { bodyPointWords } from "./bodyPointWords.ts";
import { fieldName } from "./fieldName.ts";
import { amountText, angleText } from "./lengths.ts";
import { askName } from "./worksheetWords.ts";

/** The third rank of answer, neither proven nor exact: its word, which says nothing of how likely it is, and its sign, never drawn green. */
const LIKELY_WORD = "Odds";
export const LIKELY_SIGN = "≈";

/** Said wherever odds are told at length. */
export const LIKELY_CAUTION = "Odds are not proven, and say nothing about safety.";

/** How odds are told: the units, and the document they are of, the variant shown applied. */
export interface OddsSpeech {
  readonly format: LengthFormat;
  readonly document: unknown;
  /** The truck itself: which of its numbers nobody has measured, and where points of its body stand. */
  readonly setup: Pick<Setup, "fromExample" | "truck">;
}

/** Of so many hundred. */
const WHOLE = 100;

/** Less than this is told as fewer than 1 of 100, what lacks less of all as more than 99. */
const NEVER = 0.5 / WHOLE;

/** Less than this raises nothing worth another hour under the truck. */
const WORTH = 0.01;

/**
 * The odds in one sentence for the counter: `Odds: clears in about 9 of 10 trucks measured like this (88 to 93 of 100).` It
 * tells how often it clears, however seldom that is, and what it takes for right.
 */
export function oddsSentence(
  report: OddsReport,
  { setup }: { readonly setup: Pick<Setup, "fromExample"> },
): string {
  if (report.inputs.length === 0)
    return "No number of this truck says how well it is known, so there are no odds: type ± after a value.";
  if (report.draws === 0)
    return "The time allowed was not enough for one draw, so nothing is known of the odds yet.";
  const { clears, low, high } = report;
  const does = report.gap > 0 ? "keeps its gap" : "clears";
  // Of few trucks all, or none, may do so by chance.
  const isAll = clears === 1 && low < 1 - 1 / WHOLE;
  const isNone = clears === 0 && high > 1 / WHOLE;
  // Hardly ever and nearly always are told by what that comes to: a share alone is misread.
  const surely = isAll || isNone ? null : surelyWords(clears, report.gap > 0);
  if (surely !== null)
    return `${LIKELY_WORD}: ${surely} (${intervalWords(low, high)})${ifRightWords(setup)}.`;
  const trucks =
    isAll || isNone
      ? `${isAll ? "all" : "none of the"} ${report.draws} trucks drawn that are measured like this`
      : `${shareWords(clears)} trucks measured like this`;
  return `${LIKELY_WORD}: ${does} in ${trucks} (${intervalWords(low, high)})${ifRightWords(setup)}.`;
}

/** Of odds less than 1 of 100 or more than 99: `almost surely rubs: fewer than 1 of 100 trucks measured like this clear`; null = between. */
function surelyWords(clears: number, isGap: boolean): string | null {
  const share = shareWords(clears);
  const does = isGap ? "keep the gap" : "clear";
  const of = `${share} trucks measured like this ${does}`;
  if (clears < NEVER) return `almost surely ${isGap ? "does not keep its gap" : "rubs"}: ${of}`;
  return clears > 1 - NEVER
    ? `almost surely ${isGap ? "keeps its gap" : "clears"}, which is not proven: ${of}`
    : null;
}

/** What odds take for right: numbers that nobody has measured; "" = there are none, or no truck but the example is meant. */
function ifRightWords({ fromExample }: Pick<Setup, "fromExample">): string {
  if (fromExample === null || fromExample.fields.length === 0) return "";
  const isOwn = fromExample.of === ASSUMED_LAYOUT;
  if (fromExample.isAsItCame && !isOwn) return "";
  const { length } = fromExample.fields;
  const which = isOwn ? "assumed" : "of the example’s";
  return length === 1
    ? `, if the one number ${which} is right`
    : `, if the ${length} numbers ${which} are right`;
}

/** `about 9 of 10`, `about 97 of 100`, `more than 99 of 100`, `fewer than 1 of 100`. */
export function shareWords(share: number): string {
  if (share > 1 - NEVER) return "more than 99 of 100";
  if (share < NEVER) return "fewer than 1 of 100";
  const hundredths = Math.round(WHOLE * share);
  return hundredths % 10 === 0 && hundredths > 0
    ? `about ${hundredths / 10} of 10`
    : `about ${hundredths} of 100`;
}

/** Ends of an interval, away from each other: it is told no narrower than it is. */
function intervalWords(low: number, high: number): string {
  return `${Math.floor(WHOLE * low + 1e-9)} to ${Math.ceil(WHOLE * high - 1e-9)} of 100`;
}

/**
 * What to measure or hold better first, and what that would do to the odds: what matters most of that which raises them. Of a truck
 * that is not likely to clear and that nothing known better helps, what decides most, and what little that does. null =
 * nothing is worth it.
 */
export function againSentence(report: OddsReport, speech: OddsSpeech): string | null {
  const { clears, matters, inputs } = report;
  const byShare = matters.filter(({ share }) => share >= WORTH).sort((a, b) => b.share - a.share);
  const [most] = byShare;
  const first = byShare.find(({ ifMeasuredAgain }) => ifMeasuredAgain - clears >= WORTH);
  const told = first ?? (clears < 0.5 ? most : undefined);
  if (most === undefined || told === undefined) return null;
  const name = (matter: Matter) => lowered(nameOf(matter.field, speech));
  const again = `${AGAIN[sourceOf(told, inputs)]}: ${name(told)}. If it were known twice as well, ${shareWords(told.ifMeasuredAgain)} would clear`;
  if (first === undefined)
    return `${again}: that tells more surely which way it is, and ${littleWords(told, clears)}; see what to change.`;
  return told === most
    ? `${again}.`
    : `${again}; ${name(most)} matters more, but known better it ${littleWords(most, clears)}.`;
}

/** What a number known twice as well does to the odds, where that is not worth another look. @param clears the odds as they are */
function littleWords({ ifMeasuredAgain }: Matter, clears: number): string {
  const gain = ifMeasuredAgain - clears;
  if (gain <= -WORTH) return "lowers the odds";
  return `${gain < 0 ? "lowers" : "raises"} the odds by less than 1 of ${WHOLE}`;
}

/** What is done to know a number better. */
const AGAIN: Readonly<Record<WithinSource, string>> = {
  typed: "Measure again",
  reading: "Read again",
  points: "Measure again",
  tire: "Measure the tire itself",
  build: "Hold closer",
};

function lowered(name: string): string {
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

/** One line of what matters: name, how well it is known, where that is from, its share, and the odds were it known twice as well. */
export interface MatterRow {
  readonly field: string;
  readonly name: string;
  readonly within: string;
  readonly source: string;
  /** 0 … 1, and in words. */
  readonly share: number;
  readonly shareText: string;
  readonly again: string;
}

/** Most rows shown; the others do next to nothing. */
const MOST_ROWS = 12;

/** A share below this is nothing that so few draws can tell. */
const LEAST_SHARE = 0.005;

/** What matters, most first. */
export function matterRows(report: OddsReport, speech: OddsSpeech): readonly MatterRow[] {
  const { format } = speech;
  const telling = report.matters.filter(({ share }) => share >= LEAST_SHARE);
  return telling.slice(0, MOST_ROWS).map((matter) => {
    const inputs = inputsOf(matter, report.inputs);
    const most = Math.max(...inputs.map(({ within }) => within));
    const text = inputs[0]!.kind === "length" ? fineAmount(most, format) : angleText(most, 2);
    return {
      field: matter.field,
      name: nameOf(matter.field, speech),
      within: `± ${text}`,
      source: SOURCES[sourceOf(matter, report.inputs)],
      share: matter.share,
      shareText: `${Math.round(WHOLE * matter.share)}%`,
      again: `${Math.round(WHOLE * matter.ifMeasuredAgain)} of 100`,
    };
  });
}

/** Where an uncertainty is from. */
const SOURCES: Readonly<Record<WithinSource, string>> = {
  typed: "typed",
  points: "for all points",
  tire: "tire standard",
  build: "jig's tolerance",
  reading: "reading",
};

/** What the figure is made of and what it leaves out, a sentence each. */
export function oddsNotes(report: OddsReport, speech: OddsSpeech): readonly string[] {
  const { document } = speech;
  const { draws, seed, open, apart, leftOut, inputs, confidence } = report;
  const notes = [
    `${draws} trucks drawn, each proven over all travel and both locks; seed ${seed}; the range holds in ${Math.round(WHOLE * confidence)} of 100 cases.`,
    `${inputs.length} numbers were drawn, each off by less than its ± two times in three; every other number counts as exact.`,
  ];
  if (inputs.some(({ source }) => source === "tire"))
    notes.push(
      "Tires of a size differ: two times in three, it is taken, by less than half of what UN R30 (par. 6.1.4, 6.1.5, from memory) allows a new one over its design.",
    );
  if (inputs.some(({ source }) => source === "reading"))
    notes.push(
      `Readings are drawn one by one, so points that hang on one tape move together${isOnAssumedLayout(document) ? ", and the knuckle that was worked out of them moves with them" : ""}; what no reading tells is held, and counts as exact.`,
    );
  if (inputs.some(({ source }) => source === "build"))
    notes.push(
      "Knuckles differ as built: two times in three, it is taken, by less than half of the jig's tolerance.",
    );
  if (inputs.length > 0 && report.matters.every(({ share }) => share < LEAST_SHARE))
    notes.push("Too few of the trucks drawn come out otherwise to tell which number matters.");
  if (open > 0)
    notes.push(
      `${open} ${open === 1 ? "truck is" : "trucks are"} too near to tell, and counted as touching.`,
    );
  if (apart > 0) notes.push(`${apart} did not go together, and are counted as touching.`);
  if (leftOut.length > 0)
    notes.push(
      `Not drawn, though a ± is typed: ${leftOut
        .slice(0, 5)
        .map((key) => nameOf(key, speech))
        .join("; ")}${leftOut.length > 5 ? "; …" : ""}.`,
    );
  return notes;
}

/** A reading as the worksheet calls it. */
function readingNameAt(path: KeyPath, document: unknown): string {
  const { is, within, leftOut, ...ask } = (valueAt(document, path) ?? {}) as {
    readonly [key: string]: unknown;
  };
  const isNamed =
    "between" in ask ||
    "height" in ask ||
    "offset" in ask ||
    "ahead" in ask ||
    "angle" in ask ||
    "size" in ask;
  if (isNamed) return askName(ask as ReadingAsk);
  return "stations" in ask
    ? `Stations along the ${ask.part ?? LIP}`
    : `Plumb bob, reading ${Number(path[1]) + 1}`;
}

function inputsOf({ field }: Matter, inputs: readonly OddsInput[]): readonly OddsInput[] {
  return inputs.filter(
    ({ key }) => key === field || (key.startsWith(`${field}[`) && !key.slice(field.length + 1).includes("[")),
  );
}

function sourceOf(matter: Matter, inputs: readonly OddsInput[]): WithinSource {
  return inputsOf(matter, inputs)[0]!.source;
}

/** An uncertainty is often less than the fraction shown: a hundredth of an inch, a hundredth of a millimeter. */
function fineAmount(mm: number, format: LengthFormat): string {
  const sixteenth = 25.4 / 16;
  const isFraction = format.units === "in" && Math.abs(mm / sixteenth - Math.round(mm / sixteenth)) < 1e-6;
  return isFraction
    ? amountText(mm, format)
    : amountText(mm, {
        ...format,
        ...(format.units === "in" ? { fraction: "decimal", decimals: 3 } : { decimals: 2 }),
      });
}

/** A point of the body is told by where it stands: `fender lip 5 3/8 in ahead of the axle`; a corner of a box by which it is. */
function nameOf(key: string, speech: OddsSpeech): string {
  const { document } = speech;
  const path = parseKeyText(key) ?? [];
  if (path[0] === "readings") return readingNameAt(path.slice(0, 2), document);
  const name = path[1] === "body" ? valueAt(document, [...path.slice(0, 3), "name"]) : undefined;
  if (typeof name !== "string") return fieldName(path, document);
  const [what, index] = path.slice(3);
  if (what === "points" && typeof index === "number") return bodyPointWords(name, index, speech);
  return `${name}, ${{ min: "lowest corner", max: "highest corner" }[String(what)] ?? String(what)}`;
}
