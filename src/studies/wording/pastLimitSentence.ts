import type { LengthFormat } from "../../units/formatLength.ts";
import type { LimitMargin, LimitPose } from "../limits/limitsOf.ts";
import { limitsPastAt } from "../limits/limitsPastAt.ts";
import { isSame } from "./alike.ts";
import { marginWords } from "./limitSentences.ts";
import { limitThing } from "./limitThing.ts";

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
export function pastSentence(past: readonly LimitMargin[], format: LengthFormat): string {
  const twinOf = (one: LimitMargin) =>
    past.find(
      (other) => other.side !== one.side && other.name === one.name && isSame(one.margin, other.margin),
    );
  const told = past.filter((one) => one.side === "left" || twinOf(one) === undefined);
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
