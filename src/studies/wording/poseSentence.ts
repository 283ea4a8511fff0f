import { jointOf } from "../../suspension/poseStatus.ts";
import type { ApartPose, OutOfReach, SolvedPose } from "../../suspension/solvePose.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { LimitMargin, LimitPose } from "../limits/limitsOf.ts";
import { limitsAtPose, limitsPastAt } from "../limits/limitsPastAt.ts";
import type { Model } from "../model/model.ts";
import type { Verdict } from "../reports/check.ts";
import type { GapEntry } from "../reports/gapsAt.ts";
import { gapWord } from "./gapTexts.ts";
import { amountWords, isFoundAlike } from "./lengths.ts";
import { limitThing, marginWords } from "./limitSentences.ts";
import { nearestSurface, partWords, type Surface } from "./nearestSurface.ts";
import { floorOf, heightWords, lockWords, placeWords, safeTravelWords, steerWords } from "./poseWords.ts";

/** What is told of one pose, before it is words. */
export interface PoseFacts {
  /** null when nothing is measured. */
  readonly nearest: {
    readonly entry: GapEntry;
    readonly verdict: Verdict;
    readonly surface: Surface;
    readonly part: string;
  } | null;
  /** How many more gaps are nearer than the allowance. */
  readonly others: number;
  /** The limits passed, the one past by the greatest share first. */
  readonly past: readonly LimitMargin[];
}

/** @param gaps all of that pose, in any order */
export function poseFacts(gaps: readonly GapEntry[], pose: SolvedPose | ApartPose, model: Model): PoseFacts {
  const { allowance } = model.setup;
  const entry = nearestOf(gaps);
  const tooNear = gaps.filter(({ gap }) => gapWord(gap, allowance) !== "clear").length;
  return {
    nearest: entry && {
      entry,
      verdict: gapWord(entry.gap, allowance),
      surface: nearestSurface(model, pose, entry.side, entry.part),
      part: partWords(model, entry.side, entry.part),
    },
    others: Math.max(0, tooNear - 1),
    past: limitsPastAt(limitsAtPose(model, pose)),
  };
}

/** The least gap; but what rides with the wheel and rubs before all else. */
function nearestOf(gaps: readonly GapEntry[]): GapEntry | null {
  const always = gaps.filter(({ together, gap }) => together && gap < 0);
  return (always.length > 0 ? always : gaps).reduce<GapEntry | null>(
    (best, entry) => (best === null || entry.gap < best.gap ? entry : best),
    null,
  );
}

/**
 * What touches what at one pose, in one plain sentence: the nearest part, how near, where, at which height and steering
 * angle; how many more are too near; and in another which limits it passes. @param gaps all of that pose, in any order
 */
export function poseSentence(
  gaps: readonly GapEntry[],
  pose: SolvedPose | ApartPose | OutOfReach,
  model: Model,
  format: LengthFormat,
): string {
  if (!pose.ok) return outOfReachSentence(pose, format);
  const facts = poseFacts(gaps, pose, model);
  const { others } = facts;
  const rest = others === 0 ? "" : `${others} more ${others === 1 ? "place is" : "places are"} too near.`;
  return [gapSentence(facts, pose, model, format), rest, pastSentence(facts.past, format)]
    .filter((sentence) => sentence !== "")
    .join(" ");
}

function gapSentence(
  { nearest }: PoseFacts,
  pose: SolvedPose | ApartPose,
  model: Model,
  format: LengthFormat,
): string {
  if (nearest === null)
    return "This setup has no body parts and no moving parts, so there is nothing to rub.";
  const { entry, verdict, surface, part } = nearest;
  const heights =
    "travel" in pose ? heightWords(pose.travel, model, format) : apartWords(pose, model, format);
  const when = `${heights}, ${steerWords(pose.steer, pose, entry.side)}`;
  const what = `the ${entry.side} ${surface}`;
  const amount = amountWords(entry.gap, format);
  const place = entry.together ? "at every pose" : placeWords(entry.point, floorOf(pose), format);
  const told = () => {
    switch (verdict) {
      case "rubs":
        return `${what} rubs the ${part} by ${amount}, ${place}`;
      case "close": {
        const asked = formatLength(model.setup.allowance, format);
        return `${what} is ${amount} from the ${part}, ${place}; you asked for ${asked}`;
      }
      case "clear":
        return `everything clears, the ${part} closest at ${amount} from ${what}`;
    }
  };
  return `${when.charAt(0).toUpperCase()}${when.slice(1)}: ${told()}.`;
}

function outOfReachSentence({ side, status, along, startsAt }: OutOfReach, format: LengthFormat): string {
  const limit = along === "travel" ? safeTravelWords(startsAt, format) : lockWords(startsAt);
  return `The ${side} ${jointOf(status)} cannot reach this pose; it goes as far as ${limit}.`;
}

/** `the left wheel at 1 in of bump, the right wheel at the measured height`. */
function apartWords({ travels }: ApartPose, model: Model, format: LengthFormat): string {
  const side = (name: "left" | "right") => `the ${name} wheel ${heightWords(travels[name], model, format)}`;
  return `${side("left")}, ${side("right")}`;
}

/** Limits named before the rest is counted. */
const NAMED = 2;

/**
 * What a pose passes, in one plain sentence: `Past the left lower ball joint's cone by 1.2°.`; the two sides that do the
 * same are told once; "" when every limit is kept.
 */
export function pastLimitSentence(pose: LimitPose, format: LengthFormat): string {
  return pastSentence(limitsPastAt(pose), format);
}

/** The same of the limits that a pose passes. */
function pastSentence(past: readonly LimitMargin[], format: LengthFormat): string {
  const twinOf = (one: LimitMargin) =>
    past.find(
      (other) =>
        other.side !== one.side &&
        other.name === one.name &&
        isFoundAlike(one.margin, other.margin, one.measure),
    );
  // Ranked: of two alike the first is past by more.
  const told = past.filter((one, i) => twinOf(one) === undefined || past.indexOf(twinOf(one)!) > i);
  if (told.length === 0) return "";
  const words = told.slice(0, NAMED).map((one) => {
    const whose =
      twinOf(one) === undefined
        ? `the ${one.side} ${limitThing(one.name)}`
        : `the ${limitThing(one.name)}, both sides,`;
    return `${whose} by ${marginWords(one.margin, one.measure, format)}`;
  });
  const rest = told.length - words.length;
  if (rest > 0) words.push(`${rest} more ${rest === 1 ? "limit" : "limits"}`);
  return `Past ${words.length > 2 ? `${words.slice(0, -1).join(", ")} and ${words.at(-1)}` : words.join(" and ")}.`;
}
