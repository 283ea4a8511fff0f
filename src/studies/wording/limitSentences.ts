import type { Side } from "../../suspension/frontEnd.ts";
import { degFromRad, formatAngle, radFromDeg } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { LimitOverRange, SteerStart } from "../limits/limitsPassed.ts";
import type { Model } from "../model/model.ts";
import type { ReachLimit } from "../reports/reachLimits.ts";
import { amountWords, finestLength, isFoundAlike } from "./lengths.ts";
import { heightWords, lockWords, safeTravelWords } from "./poseWords.ts";
import { onSafeSide, safeLength } from "./safeSide.ts";

/** mm. A start this near travel 0 is at the measured height itself. */
const AT_MEASURED = 1e-6;

/** A margin's size, in words: `3.2°`, `1/4 in`. What is kept is never told greater, what is passed never smaller. */
export function marginWords(margin: number, measure: "length" | "angle", format: LengthFormat): string {
  const told = Math.abs(toldMargin(margin, measure, format));
  if (measure === "angle") return told === 0 ? "less than 0.1°" : formatAngle(told, 1);
  return amountWords(told === 0 ? 0.1 * finestLength(format) : told, format);
}

/** A margin as it is told, mm or rad: on the steps of the format, on the safe side. */
function toldMargin(margin: number, measure: "length" | "angle", format: LengthFormat): number {
  return measure === "angle"
    ? radFromDeg(onSafeSide(degFromRad(margin), 0.1, "down"))
    : safeLength(margin, "down", format);
}

/**
 * Where limits are passed, and by how much at most, one plain sentence each; two sides that do the same at the same
 * heights share one: `Outer tie rod end, both sides: past its limit from 3 1/4 in of droop on, by 3.2° at most.`
 */
export function limitsPassedSentences(
  limits: readonly LimitOverRange[],
  model: Model,
  format: LengthFormat,
): string[] {
  return limits.flatMap((limit) => {
    const other = limits.find((one) => one !== limit && one.name === limit.name);
    const shared = other !== undefined && isAlike(limit, other);
    // Of two alike the one past by more is told.
    if (shared && (other.margin < limit.margin || (other.margin === limit.margin && limit.side === "right")))
      return [];
    const { name, side, margin, measure } = limit;
    const who = `${name.charAt(0).toUpperCase()}${name.slice(1)}, ${shared ? "both sides" : side}`;
    const starts = startWords(limit, model, format);
    const where = starts.length > 0 ? starts.join(" and ") : heightWords(limit.travel, model, format);
    return [`${who}: past its limit ${where}, by ${marginWords(margin, measure, format)} at most.`];
  });
}

/**
 * What the limits leave of the range, in one plain sentence: `Poses past the steering stop and the droop strap are
 * not counted.`; "" where no limit is passed.
 * @param limitedBy as in a check's report.
 */
export function countedSentence(
  passed: readonly LimitOverRange[] | undefined,
  limitedBy: readonly string[] | undefined,
): string {
  if (passed === undefined || limitedBy === undefined || passed.length === 0) return "";
  if (limitedBy.length === 0) return "Every pose passes some limit, so every pose is counted.";
  // An axis of a joint is part of the joint.
  const whole = limitedBy.map((name) => `the ${name.replace(/, (in and out|fore and aft)$/, "")}`);
  const names = [...new Set(whole)].map((name) =>
    /joint$|end$/.test(name) ? `${name}'s limit` : /sion$/.test(name) ? `${name} limit` : name,
  );
  const last = names.pop()!;
  const listed = names.length === 0 ? last : `${names.join(", ")} and ${last}`;
  return `Poses past ${listed} are not counted.`;
}

/** Both start at the same heights, straight ahead, and come to the same. */
function isAlike(a: LimitOverRange, b: LimitOverRange): boolean {
  const [x, y] = [a.starts, b.starts];
  if (x === null || y === null || !isFoundAlike(a.margin, b.margin, a.measure)) return false;
  const isOne = (one: number | null, other: number | null) =>
    one === null || other === null ? one === other : isFoundAlike(one, other, "length");
  return (x.bump !== null || x.droop !== null) && isOne(x.bump, y.bump) && isOne(x.droop, y.droop);
}

function startWords({ starts }: LimitOverRange, model: Model, format: LengthFormat): string[] {
  if (starts === null) return [];
  const words: string[] = [];
  for (const travel of [starts.bump, starts.droop]) {
    if (travel === null) continue;
    words.push(
      Math.abs(travel) < AT_MEASURED
        ? "at the measured height already"
        : `from ${safeTravelWords(travel, format)} on`,
    );
  }
  if (words.length > 0) return [...new Set(words)];
  const steers = [starts.left, starts.right].filter((start): start is SteerStart => start !== null);
  return steers.map(
    ({ steer, travel }) => `from ${lockWords(steer)} on ${heightWords(travel, model, format)}`,
  );
}

/** What it is of a limit that is met or passed: a joint has a cone and planes, a rod end an angle; a stop is a thing itself. */
export function limitThing(name: string): string {
  const [joint, plane] = name.split(", ");
  if (plane !== undefined) return `${joint}'s limit ${plane}`;
  if (/ball joint$/.test(name)) return `${name}'s cone`;
  if (/ end$/.test(name)) return `${name}'s angle`;
  return /compression$|extension$/.test(name) ? `${name} limit` : name;
}

/** The thing that stops the truck: of an air spring or shock the thing itself, whichever end of it is met. */
export function limitStopper(name: string): string {
  const thing = limitThing(name);
  return thing.replace(/ (?:compression|extension) limit$/, "");
}

/** A limit that is met, as a clause: a stop or strap is met, a joint, spring or shock is at its limit. @param side null = either */
export function limitMet(name: string, side: Side | null = null): string {
  const [thing, plane] = name.replace(/ (?:compression|extension)$/, "").split(", ");
  const who = `the ${side === null ? "" : `${side} `}${thing}`;
  if (/ (?:stop|strap)$/.test(name)) return `${who} is met`;
  return `${who} is at its limit${plane === undefined ? "" : ` ${plane}`}`;
}

/** Where one joint cannot follow, in one plain sentence. */
export function limitSentence(limit: ReachLimit, model: Model, format: LengthFormat): string {
  const joint = `The ${limit.side} ${limit.joint}`;
  if (limit.along === "travel") {
    return `${joint} cannot follow past ${safeTravelWords(limit.startsAt, format)}.`;
  }
  const tightest = heightWords(limit.travel, model, format);
  return `${joint} cannot follow past ${lockWords(limit.startsAt)}, tightest ${tightest}.`;
}
