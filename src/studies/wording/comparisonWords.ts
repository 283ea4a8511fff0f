import { solvePose } from "../../suspension/solvePose.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { HeightStop } from "../limits/heightWay.ts";
import type { NoLimits, SteerLimits } from "../map/steerLimits.ts";
import type { Model } from "../model/model.ts";
import type { CheckReport } from "../reports/check.ts";
import { type HeightFacts, heightClause, heightFacts } from "./heightWords.ts";
import { amountWords, finestLength } from "./lengths.ts";
import { heightWords } from "./poseWords.ts";
import { firstStop, firstTouch, type SteerStop, steerStop } from "./stopFacts.ts";
import { steerClauseOf } from "./stopTexts.ts";
import { truckName } from "./truckName.ts";
import { type ToldEntry, type VerdictFacts, verdictFacts } from "./verdictFacts.ts";
import { scopeWords, settledWords } from "./verdictSentence.ts";

/** Center plane to the left contact patch, mm, straight ahead as measured; null where the wheels cannot stand. */
export function halfTrack(model: Model): number | null {
  const pose = solvePose(model.frontEnd, 0, 0);
  return pose.ok ? Math.abs(pose.left.contactPatch[1]) : null;
}

/** A truck in a sentence: by its name; or, where its name stands beside its letter already, by that alone. */
export type Mention = string | { readonly letter: string };

/** Who stands farther out as measured, and by how much. @param halfTracks mm, of the two in order */
export function outSentence(
  names: readonly [Mention, Mention],
  halfTracks: readonly [number, number],
  format: LengthFormat,
): string {
  const farther = halfTracks[0] - halfTracks[1];
  const [one, other] = names.map(quoted);
  if (Math.abs(farther) < 0.5 * finestLength(format))
    return `As measured, the wheels of ${one} and ${other} sit equally far out.`;
  const amount = formatLength(Math.abs(farther), format);
  const [wide, narrow] = farther > 0 ? [one, other] : [other, one];
  return `As measured, the wheels of ${wide} sit ${amount} farther out per side than those of ${narrow}.`;
}

/** What is told of a truck's steering at a height: what stops it first, or why it cannot stand there. */
export type SteeringFacts =
  | {
      readonly stands: true;
      readonly first: SteerStop;
      /** Where the first way ends before its end is known: the first touch of the others; else null. */
      readonly known: SteerStop | null;
    }
  | { readonly stands: false; readonly height: HeightFacts };

/** @param height what keeps the truck from that height; null = it stands there */
export function steeringFacts(
  steering: SteerLimits | NoLimits,
  height: HeightStop | null,
  model: Model,
  format: LengthFormat,
): SteeringFacts {
  const { travel } = steering;
  if (height !== null) return { stands: false, height: heightFacts(travel, height, format) };
  if (!steering.ok) throw new TypeError(`steeringFacts: no steering at ${travel} mm, where the truck stands`);
  const first = firstStop(steering);
  const touch = first.stop === "unproven" ? firstTouch(steering) : null;
  return {
    stands: true,
    first: steerStop(first, travel, model),
    known: touch && steerStop(touch, travel, model),
  };
}

/** What stops the steering first at a height: a clause that begins with the name. */
export function steerClause(name: Mention, facts: SteeringFacts, model: Model, format: LengthFormat): string {
  const who = quoted(name);
  if (!facts.stands) return `${who} ${heightClause(facts.height, model, format)}`;
  const { first, known } = facts;
  const more = known === null ? "" : `, but ${steerClauseOf("it", known, format)}`;
  return `${steerClauseOf(who, first, format)}${more}`;
}

/** Both at one height, in one sentence; where none can stand there its clauses say so themselves. @param travel mm */
export function steerSentence(
  travel: number,
  model: Model,
  clauses: readonly string[],
  facts: readonly SteeringFacts[],
  format: LengthFormat,
): string {
  const told = `${clauses.join("; ")}.`;
  if (!facts.some(({ stands }) => stands)) return capitalized(told);
  return `${capitalized(heightWords(travel, model, format))}, ${told}`;
}

/** The answer over the whole range of height and steering: a clause that begins with the name. */
export function rangeClause(name: Mention, report: CheckReport, model: Model, format: LengthFormat): string {
  const who = quoted(name);
  const { verdict, told, always, scope } = verdictFacts(report, model);
  if (told === null) return `nothing is measured on ${who}`;
  const { entry, part, surface } = told;
  const amount = amountWords(entry.gap, format);
  switch (verdict) {
    case "rubs":
      return `the ${surface} of ${who} rubs the ${part} by ${amount}${entry.together ? " at every pose" : ""}${alwaysPart(always, format)}`;
    case "close": {
      const asked = formatLength(model.setup.allowance, format);
      return `the ${surface} of ${who} comes within ${amount} of the ${part}, nearer than the ${asked} asked for`;
    }
    case "unfinished":
      return `the search of ${who} is not finished, the nearest so far being the ${part}, ${amount} away${entry.gap < model.setup.allowance ? `, nearer than the ${formatLength(model.setup.allowance, format)} asked for` : ""}: ${settledWords(report, format)}`;
    case "clear":
      return `${who} ${clearsWords(entry.gap, scope, format)}, the ${part} being nearest`;
  }
}

/** What rubs at every pose beside the worst: `, and at every pose the wheel the tie rod end by 1/4 in`; "" = nothing does. */
function alwaysPart(always: ToldEntry | null, format: LengthFormat): string {
  return always === null
    ? ""
    : `, and at every pose the ${always.surface} the ${always.part} by ${amountWords(always.entry.gap, format)}`;
}

/** By how much everything clears, and how far that holds: `clears by 3/8 in within the limits`. @param gap the least, mm */
export function clearsWords(gap: number, scope: VerdictFacts["scope"], format: LengthFormat): string {
  return `clears by ${amountWords(gap, format)}${scopeWords(scope)}`;
}

/** Both over the whole range, in one sentence. */
export function rangeSentence(clauses: readonly string[]): string {
  return `Over every height and steering angle, ${clauses.join("; ")}.`;
}

/** A name as it stands in a sentence: a variant's is quoted, a letter stands by itself. */
function quoted(name: Mention): string {
  if (typeof name !== "string") return name.letter;
  return name === truckName(null) ? `the ${name}` : `“${name}”`;
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
