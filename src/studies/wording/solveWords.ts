import { parseKeyText } from "../../setup/types/keyPath.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import {
  type GapBracket,
  type Solved,
  type SolveReport,
  type SolveTarget,
  targetMeasure,
  targetTravel,
} from "../solve/solveTypes.ts";
import { movesSentence } from "./changeWords.ts";
import { fieldName } from "./fieldName.ts";
import { angleText, lengthText } from "./lengths.ts";
import { heightWords, stanceAt } from "./poseWords.ts";
import { safeLength } from "./safeSide.ts";
import { setByWords, type WindowSpeech } from "./windowWords.ts";

const NAMES: Readonly<Record<SolveTarget["of"], string>> = {
  camber: "Camber",
  caster: "Caster",
  kingpinInclination: "Kingpin inclination",
  scrubRadius: "Scrub radius",
  mechanicalTrail: "Mechanical trail",
  halfTrack: "Half track",
  gap: "Worst gap of all",
  bumpSteer: "Least bump steer",
};

/** What a target is called in a list. */
export function targetName(of: SolveTarget["of"]): string {
  return NAMES[of];
}

/** Digits after the point: a value that is solved for is told finer than a tape reads, since it is worked out, not measured. */
const DIGITS = { in: 3, mm: 2, deg: 2 } as const;

function fineFormat({ units }: LengthFormat): LengthFormat {
  return { units, fraction: "decimal", decimals: DIGITS[units] };
}

/** A value of the field, or what is wanted, told finely; mm or radians. */
export function solvedText(value: number, measure: "length" | "angle", format: LengthFormat): string {
  return measure === "angle" ? angleText(value, DIGITS.deg) : lengthText(value, fineFormat(format));
}

/** What is found, then how sure it is; a sentence each. */
export function solveSentences(report: SolveReport, speech: WindowSpeech): readonly string[] {
  const { found } = report;
  const told = found.flatMap((one) => [
    foundSentence(one, report, speech),
    ...alsoSentences(one, report, speech),
  ]);
  return [...(found.length === 0 ? noneSentences(report, speech) : told), ...sureSentences(report, speech)];
}

function words(report: SolveReport, { format, document }: WindowSpeech) {
  const measure = targetMeasure(report.target);
  return {
    name: fieldName(parseKeyText(report.field) ?? [], document),
    field: (value: number) => solvedText(value, report.kind, format),
    reach: (value: number) => solvedText(value, measure, format),
    of: report.target.of === "gap" ? "the worst gap" : targetName(report.target.of).toLowerCase(),
  };
}

/** `camber −0.50°`, `a worst gap of 0.316 in`. */
function amountOf({ target }: SolveReport, amount: string, { model, format }: WindowSpeech): string {
  if (target.of === "gap") return `a worst gap of ${amount}`;
  const told = `${targetName(target.of).toLowerCase()} ${amount}`;
  const at = targetTravel(target);
  return at === 0 ? told : `${told} ${heightWords(at, model, format)}`;
}

/** `Pin angle 9.10° (now 8.50°) gives camber −0.50°.` */
function foundSentence(one: Solved, report: SolveReport, speech: WindowSpeech): string {
  const { name, field, reach } = words(report, speech);
  const now = `now ${field(report.now)}`;
  const was = report.reachedNow === null ? "" : `, now ${reach(report.reachedNow)}`;
  if (report.target.of === "bumpSteer")
    return `Least bump steer: ${name.toLowerCase()} ${field(one.value)} (${now}); the toe change farthest from 0 is then ${reach(one.reached)}${was}.`;
  const tape = report.kind === "length" ? tapeWords(one, speech.format) : "";
  const past = report.asked && (one.value < report.asked.from || one.value > report.asked.to);
  const gives = `${past ? "Past the range looked at first: " : ""}${past ? lowered(name) : name} ${field(one.value)}${tape} (${now}) gives ${amountOf(report, reach(one.reached), speech)}${was}.`;
  return one.bracket === undefined ? gives : `${gives} ${beyondSentence(one.bracket, report, speech)}`;
}

/** What a value moves besides: `With 22.44° camber would become −14.02°, unusual (now −0.08°); the worst gap …`. */
function alsoSentences(
  { value, also }: Solved,
  report: SolveReport,
  speech: WindowSpeech,
): readonly string[] {
  if (also === undefined) return [];
  const { field } = words(report, speech);
  const numbers = also.numbers.map(({ what, from, to, isUnusual }) => {
    const text = (one: number) => solvedText(one, targetMeasure({ of: what }), speech.format);
    const name = what === "gap" ? "the worst gap" : targetName(what).toLowerCase();
    return `${name} would become ${text(to)}${isUnusual ? ", unusual" : ""} (now ${text(from)})`;
  });
  return [
    ...(numbers.length === 0 ? [] : [`With ${field(value)} ${numbers.join("; ")}.`]),
    ...also.moves.map((moves) => movesSentence(moves, speech.format)),
  ];
}

/** What is too near a tolerance beyond, for the gap wanted instead of the one the setup keeps. */
function beyondSentence({ beyond, by }: GapBracket, report: SolveReport, speech: WindowSpeech): string {
  const { model } = speech;
  const allowance = "value" in report.target ? report.target.value : model.setup.allowance;
  const wanting = {
    ...speech,
    model: { ...model, setup: { ...model.setup, allowance } },
    format: fineFormat(speech.format),
  };
  return `At ${solvedText(beyond, report.kind, speech.format)} ${setByWords(by, wanting)}.`;
}

/** Why no value is told. */
function noneSentences(report: SolveReport, speech: WindowSpeech): readonly string[] {
  const { name, field, reach, of } = words(report, speech);
  const { from, to, nearest, reachedNow, isUnmoved, target, asked } = report;
  const range = `from ${field(from)} to ${field(to)}`;
  if (isUnmoved && reachedNow !== null)
    return [`${name} does not change ${of}: it is ${reach(reachedNow)} at every value looked at ${range}.`];
  const wanted =
    "value" in target
      ? ` gives ${amountOf(report, reach(target.value), speech)}`
      : " lets both wheels follow the travel";
  const none = `${name}: no value ${range} ${report.cutShort ? "is known so far that" : "was found that"}${wanted}.`;
  if (nearest === null) return [none];
  const on = asked
    ? [`Looked at first was ${field(asked.from)} to ${field(asked.to)}; it was looked on past the end.`]
    : [];
  return [
    none,
    ...on,
    `Nearest of those looked at: ${field(nearest.value)}, with ${reach(nearest.reached)}.`,
    ...alsoSentences(nearest, report, speech),
  ];
}

/** That there is more to look at past the end of the range, where what comes nearest stands. */
export const NEAREST_AT_END = "The nearest stands at the end of the range looked at: look on past it.";

/** The button that looks on. @param range mm or radians */
export function lookOnText(
  { from, to }: { readonly from: number; readonly to: number },
  kind: "length" | "angle",
  format: LengthFormat,
): string {
  return `Look from ${solvedText(from, kind, format)} to ${solvedText(to, kind, format)}`;
}

/** `as measured (“driving”)`: the height as measured, and what the setup calls it. */
function standingWords({ setup }: WindowSpeech["model"]): string {
  const stance = stanceAt(0, setup);
  return stance === null ? "as measured" : `as measured (“${stance}”)`;
}

/** How far the answer holds: exact at a pose, or proven on both sides; and what is known of other values. */
function sureSentences(
  { target, between, kind, found }: SolveReport,
  { model, format }: WindowSpeech,
): readonly string[] {
  const every = between.rank === "sampled" ? solvedText(between.step, kind, format) : "";
  const looked = `the range was looked at every ${every}, and what happens between is not proven`;
  if (target.of === "gap") {
    if (found.length === 0)
      return between.rank === "proven" ? ["The whole range was looked at."] : [`The${looked.slice(3)}.`];
    const sides =
      "Proven on both sides: a check clears at the value with this gap to keep, and not at the one beyond it";
    return [between.rank === "proven" ? `${sides}.` : `${sides}; ${looked}.`];
  }
  const many =
    found.length > 1 ? "Several values give it: all that were found by stepping over the range. " : "";
  if (target.of === "bumpSteer")
    return [`Least by the root mean square of both wheels' toe change over the travel; ${looked}.`];
  const at = targetTravel(target);
  const where = at === 0 ? standingWords(model) : heightWords(at, model, format);
  return [`${many}Exact ${where}, wheels straight ahead; ${looked}.`];
}

function lowered(name: string): string {
  return `${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

/** `, about 6 3/16 in`, where a tape reads fractions; of a gap on the side that keeps it. */
function tapeWords({ value, bracket }: Solved, { units }: LengthFormat): string {
  if (units !== "in") return "";
  const tape: LengthFormat = { units, fraction: 16 };
  if (bracket === undefined) return `, about ${lengthText(value, tape)}`;
  return `, on a tape ${lengthText(safeLength(value, bracket.beyond > value ? "down" : "up", tape), tape)}`;
}
