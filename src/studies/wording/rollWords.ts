import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { RollAsked, RollCase } from "../floor/rollCase.ts";
import type { RollCoverage, RollStance } from "../floor/rollCoverage.ts";
import { amountWords, finestLength, lengthText } from "./lengths.ts";
import { limitStopper } from "./limitSentences.ts";
import { travelWords } from "./poseWords.ts";

/**
 * What roll and curb ask for and whether a check over the setup's travel has it, in plain sentences: the whole first,
 * then what is stopped or left out at each stance, and what to set to have it in.
 */
export function rollSentences(coverage: RollCoverage, format: LengthFormat): string[] {
  const { roll, stances, covered } = coverage;
  const curb = roll.curb === null ? "" : ` and one wheel ${amountWords(roll.curb, format)} over a curb`;
  const asked = `Roll of ${formatAngle(roll.most, 1)} either way${curb}`;
  const first = covered
    ? `${asked}: all of it that nothing stops is in the check, since each wheel is checked over its whole travel.`
    : `${asked}: not all of it is in the check.`;
  return [first, ...stances.flatMap((stance) => stanceSentences(stance, format)), ...mends(coverage, format)];
}

/** `roll to the right`, `left wheel over the curb`: the body leans to the side that goes down. */
export function askedWords(asked: RollAsked): string {
  if (asked.kind === "curb") return `${asked.side} wheel over the curb`;
  return `roll to the ${asked.roll >= 0 ? "right" : "left"}`;
}

function stanceSentences({ name, cases }: RollStance, format: LengthFormat): string[] {
  return (["roll", "curb"] as const).flatMap((kind) => {
    const told = cases
      .filter(({ asked, state }) => asked.kind === kind && state !== "covered")
      .map((one) => ({ who: askedWords(one.asked), line: caseWords(one, format) }));
    const [first, second] = told;
    const either = kind === "roll" ? "roll either way" : "either wheel over the curb";
    const alike = first && second && first.line === second.line ? [{ who: either, line: first.line }] : told;
    return alike.map(({ who, line }) => `At the “${name}” stance, ${who}: ${line}.`);
  });
}

function caseWords({ asked, stops, uncovered, until }: RollCase, format: LengthFormat): string {
  const names = [...new Set(stops.map(({ name }) => limitStopper(name)))].join(" and the ");
  const stopped =
    names === ""
      ? "nothing in the setup stops the wheel"
      : `stopped by the ${names} ${untilWords(asked, until, format)}`;
  if (uncovered.length === 0) return stopped;
  const past = uncovered.map(
    ({ from, to }) => `from ${lengthText(Math.abs(from), format)} to ${travelWords(to, format)}`,
  );
  return `${stopped}; the check leaves out travel ${[...new Set(past)].join(" and ")}`;
}

function untilWords(asked: RollAsked, until: number | null, format: LengthFormat): string {
  if (until === null || Math.abs(until) < NOTHING) return "at once";
  return asked.kind === "roll"
    ? `after ${formatAngle(Math.abs(until), 1)}`
    : `after ${amountWords(until, format)}`;
}

/** mm or radians. */
const NOTHING = 1e-4;

/** What to set to have it all in the check, rounded outward so that typing it works. */
function mends({ stances, range, covered }: RollCoverage, format: LengthFormat): string[] {
  if (covered) return [];
  const ends = stances.flatMap(({ cases }) =>
    cases.flatMap(({ uncovered }) => uncovered.map(({ to }) => to)),
  );
  const finest = finestLength(format);
  const outward = (mm: number) => Math.sign(mm) * Math.ceil(Math.abs(mm) / finest) * finest;
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const sets = [
    ...(high > range.bump ? [`travel.bump to ${formatLength(outward(high), format)}`] : []),
    ...(low < range.droop ? [`travel.droop to ${formatLength(outward(low), format)}`] : []),
  ];
  return [
    `To have it all in the check, set ${sets.join(" and ")}, or give the stops that keep the wheels from it.`,
  ];
}
