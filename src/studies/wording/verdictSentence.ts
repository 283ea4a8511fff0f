import type { SolvedPose } from "../../suspension/solvePose.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import type { CheckEntry, CheckReport } from "../reports/check.ts";
import { amountWords } from "./lengths.ts";
import { heightWords, isStraight, reportedPose, steerWords, wayOf } from "./poseWords.ts";
import { safeLength } from "./safeSide.ts";
import { type ToldEntry, type VerdictFacts, verdictFacts } from "./verdictFacts.ts";

/**
 * The answer of a check in one plain sentence: what touches, where, how much, at which height and steering
 * angle (that of the wheel named). Lengths as `format` shows them, to the nearest 1/16 in by default.
 */
export function verdictSentence(report: CheckReport, model: Model, format: LengthFormat): string {
  const { verdict, told: facts, always, scope } = verdictFacts(report, model);
  if (facts === null) return "This setup has no body parts, so there is nothing to rub.";
  const { entry: told, twin, surface } = facts;
  const pose = reportedPose(model, told.travel, told.steer);
  const when = told.together ? ALWAYS : whenWords(told, twin, pose, model, format);
  const one = twin ? `the ${surface}` : `the ${told.side} ${surface}`;
  const sides = twin ? " on both sides" : "";
  const part = withArticle(facts.part);
  const amount = amountWords(told.gap, format);
  const asked = formatLength(model.setup.allowance, format);
  switch (verdict) {
    case "rubs":
      return capitalized(
        `${one} rubs ${part}${sides} by ${amount} ${when}${alwaysClause(always, format)}${alsoRubs(report, told, twin, always)}.`,
      );
    case "close": {
      const near = nearWords(told.gap, model.setup.allowance, format);
      return capitalized(`${part} comes within ${near} of ${one}${sides} ${when}; you asked for ${asked}.`);
    }
    case "unfinished": {
      const short = told.gap < model.setup.allowance ? `; you asked for ${asked}` : "";
      return `So far the nearest found is ${part}, ${amount} from ${one}${sides} ${when}${short}; ${settledWords(report, format)}.`;
    }
    case "clear":
      return `Everything clears${scopeWords(scope)}: the closest is ${part}, ${amount} from ${one}${sides} ${when}.`;
  }
}

/** What a check that was cut short has settled all the same. */
export function settledWords({ parts }: CheckReport, format: LengthFormat): string {
  const kept = safeLength(Math.min(...parts.map(({ bound }) => bound)), "down", format);
  return kept > 0
    ? `nothing comes nearer than ${formatLength(kept, format)}`
    : "whether something touches is still open";
}

/** When, of things that ride together. */
const ALWAYS = "at every pose";

function whenWords(
  told: CheckEntry,
  twin: CheckEntry | null,
  pose: SolvedPose | null,
  model: Model,
  format: LengthFormat,
): string {
  const steered = steerWords(told.steer, pose, told.side);
  return [
    heightWords(told.travel, model, format),
    twin && !isStraight(told.steer)
      ? `the ${told.side} one ${steered}, the ${twin.side} one as far to the ${wayOf(twin.steer)}`
      : steered,
  ].join(", ");
}

/** How far an answer holds; "" over the whole range asked for. */
export function scopeWords(scope: VerdictFacts["scope"]): string {
  switch (scope) {
    case "all":
      return "";
    case "reach":
      return " as far as the linkage reaches";
    case "limits":
      return " within the limits";
  }
}

/** What rubs at every pose beside the worst: `; at every pose the rotor rubs the lower ball joint by 7/16 in`; "" = nothing does. */
function alwaysClause(always: ToldEntry | null, format: LengthFormat): string {
  if (always === null) return "";
  const { entry, surface, part } = always;
  return `; ${ALWAYS} the ${surface} rubs ${withArticle(part)} by ${amountWords(entry.gap, format)}`;
}

/** What else rubs: one or two parts named, more counted; "" when nothing does. */
function alsoRubs(
  report: CheckReport,
  told: CheckEntry,
  twin: CheckEntry | null,
  always: ToldEntry | null,
): string {
  const others = report.parts.filter(
    (e) => e.verdict === "rubs" && e !== told && e !== twin && e.part !== always?.entry.part,
  );
  const parts = [...new Set(others.filter((e) => e.part !== told.part).map((e) => withArticle(e.part)))];
  const words: string[] = [];
  if (others.some((e) => e.part === told.part)) words.push("the other side rubs it too");
  if (parts.length > 2) words.push(`${parts.length} more parts rub`);
  else if (parts.length > 0) words.push(`${parts.join(" and ")} ${parts.length === 1 ? "rubs" : "rub"} too`);
  return words.length > 0 ? `; ${words.join(", and ")}` : "";
}

/** How near, so that it never reads the same as the allowance it misses. */
function nearWords(gap: number, allowance: number, format: LengthFormat): string {
  const near = amountWords(gap, format);
  if (near !== formatLength(allowance, format)) return near;
  return gap < allowance ? `just under ${near}` : `hardly more than ${near}`;
}

function withArticle(part: string): string {
  return /^the /i.test(part) ? part : `the ${part}`;
}

function capitalized(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
