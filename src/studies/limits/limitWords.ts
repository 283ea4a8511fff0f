import { formatAngle } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model.ts";
import { amountWords } from "../sentenceAmount.ts";
import { heightWords, lockWords, travelWords } from "../sentencePose.ts";
import type { LimitOverRange, SteerStart } from "./limitsPassed.ts";

/** mm. A start this near travel 0 is at the measured height itself. */
const AT_MEASURED = 1e-6;

/** A margin's size, in words: `3.2°`, `1/4 in`. */
export function marginWords(margin: number, measure: "length" | "angle", format: LengthFormat): string {
  return measure === "angle" ? formatAngle(Math.abs(margin), 1) : amountWords(margin, format);
}

/**
 * Where a limit is passed, and by how much at most, in one plain sentence: `The left outer tie rod end passes its limit
 * past 3 1/4 in of droop, by 3.2° at most.`
 */
export function limitPassedSentence(limit: LimitOverRange, model: Model, format: LengthFormat): string {
  const { name, side, margin, measure } = limit;
  const starts = startWords(limit, model, format);
  const where = starts.length > 0 ? starts.join(" and ") : heightWords(limit.travel, model, format);
  return `The ${side} ${name} is past its limit ${where}, by ${marginWords(margin, measure, format)} at most.`;
}

function startWords({ starts }: LimitOverRange, model: Model, format: LengthFormat): string[] {
  if (starts === null) return [];
  const words: string[] = [];
  for (const travel of [starts.bump, starts.droop]) {
    if (travel === null) continue;
    words.push(
      Math.abs(travel) < AT_MEASURED
        ? "at the measured height already"
        : `past ${travelWords(travel, format)}`,
    );
  }
  if (words.length > 0) return [...new Set(words)];
  const steers = [starts.left, starts.right].filter((start): start is SteerStart => start !== null);
  return steers.map(({ steer, travel }) => `past ${lockWords(steer)} ${heightWords(travel, model, format)}`);
}
