import type { Limit } from "../../studies/map/limit.ts";
import type { MapReport } from "../../studies/map/mapReport.ts";
import type { Model } from "../../studies/model.ts";
import { finestLength } from "../../studies/sentenceAmount.ts";
import { heightWords, isStraight, lockWords, travelWords } from "../../studies/sentencePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";

type Touch = Extract<Limit, { stop: "touch" }>;

/**
 * The tightest of the heights and of the steering inputs of a map, in one plain sentence: at which height it steers
 * least, and at which steering input it stays highest, before something touches.
 */
export function mapSentence({ steerAtHeight, lowestAtSteer }: MapReport, model: Model): string {
  const format: LengthFormat = { units: model.setup.units };
  const turns = steerAtHeight.flatMap((row) =>
    row.ok ? [row.leftTurn, row.rightTurn].flatMap(({ touch }) => touching(touch.either, row.travel)) : [],
  );
  const ways = lowestAtSteer.flatMap((row) => (row.ok ? touching(row.touch.either, row.steer) : []));
  const [turn, way] = [
    leastOf(turns, (each) => Math.abs(each.limit.at)),
    leastOf(ways, (each) => each.limit.at),
  ];
  const told = [
    turn === null ? "" : `${heightWords(turn.where, model, format)} ${steerWords(turn.limit)}`,
    way === null ? "" : lowWords(way, model, format),
  ].filter((half) => half !== "");
  if (told.length === 0) return "Nothing touches at any height or steering input below.";
  const sentence = `${told.join("; ")}.`;
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`;
}

interface Told {
  readonly limit: Touch;
  /** The travel or steer it is told for. */
  readonly where: number;
}

function touching(limit: Limit, where: number): Told[] {
  return limit.stop === "touch" ? [{ limit, where }] : [];
}

function leastOf(told: readonly Told[], size: (each: Told) => number): Told | null {
  let least: Told | null = null;
  for (const each of told) if (least === null || size(each) < size(least)) least = each;
  return least;
}

function steerWords({ at, part, side }: Touch): string {
  const touches = `the ${part} touches on the ${side}`;
  return isStraight(at)
    ? `${touches} straight ahead already`
    : `it steers to ${lockWords(at)} before ${touches}`;
}

function inputWords(steer: number): string {
  return isStraight(steer) ? "straight ahead" : `at ${lockWords(steer)}`;
}

function lowWords({ where, limit: { at, part, side } }: Told, model: Model, format: LengthFormat): string {
  const touches = `the ${part} touches on the ${side}`;
  if (at <= model.setup.travel.droop) return `${inputWords(where)} ${touches} at full droop already`;
  const low = Math.abs(at) < 0.5 * finestLength(format) ? "the measured height" : travelWords(at, format);
  return `${inputWords(where)} it comes down to ${low} before ${touches}`;
}
