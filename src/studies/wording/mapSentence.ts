import type { LengthFormat } from "../../units/formatLength.ts";
import type { Limit } from "../map/limit.ts";
import type { MapReport } from "../map/mapReport.ts";
import type { Model } from "../model/model.ts";
import { alwaysWords } from "./alwaysWords.ts";
import { heightWords, isStraight, lockWords, travelWords } from "./poseWords.ts";
import { safeLength } from "./safeSide.ts";

type Stop = Extract<Limit, { stop: "touch" | "limit" }>;

/**
 * The tightest of the heights and of the steering inputs of a map, in one plain sentence: at which height it steers
 * least, and at which steering input it stays highest, before something touches or a limit is met.
 */
export function mapSentence(report: MapReport, model: Model): string {
  const { steerAtHeight, lowestAtSteer, passesLimit, always } = report;
  const format: LengthFormat = { units: model.setup.units };
  // What rubs at every pose comes first, and leaves no way to tell of.
  const rubs = always.filter(({ gap }) => gap < 0);
  if (rubs.length > 0) return alwaysWords(rubs, model, format);
  const turns = steerAtHeight.flatMap((row) =>
    row.ok ? [row.leftTurn, row.rightTurn].flatMap(({ touch }) => stopping(touch.either, row.travel, 0)) : [],
  );
  const ways = lowestAtSteer.flatMap((row) =>
    row.ok ? stopping(row.touch.either, row.steer, row.touch.from) : [],
  );
  const [turn, way] = [
    leastOf(turns, (each) => Math.abs(each.limit.at)),
    leastOf(ways, (each) => each.limit.at),
  ];
  const told = [
    turn === null ? "" : `${heightWords(turn.where, model, format)} ${steerWords(turn.limit)}`,
    way === null ? "" : lowWords(way, model, format),
  ].filter((half) => half !== "");
  if (told.length === 0)
    return passesLimit
      ? "Nothing touches at any height or steering input below that keeps the limits."
      : "Nothing touches at any height or steering input below.";
  const sentence = `${told.join("; ")}.`;
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`;
}

interface Told {
  readonly limit: Stop;
  /** The travel or steer it is told for. */
  readonly where: number;
}

/** A height or steering input that passes a limit where its way starts is nowhere to go on from: not told. */
function stopping(limit: Limit, where: number, from: number): Told[] {
  const told = limit.stop === "touch" || (limit.stop === "limit" && limit.at !== from);
  return told ? [{ limit, where }] : [];
}

function leastOf(told: readonly Told[], size: (each: Told) => number): Told | null {
  let least: Told | null = null;
  for (const each of told) if (least === null || size(each) < size(least)) least = each;
  return least;
}

/** What happens there: `the fender lip touches on the left`, `the left steering stop is at its limit`. */
function stopWords(limit: Stop): string {
  return limit.stop === "touch"
    ? `the ${limit.part} touches on the ${limit.side}`
    : `the ${limit.side} ${limit.name} is at its limit`;
}

function steerWords(limit: Stop): string {
  const stops = stopWords(limit);
  return isStraight(limit.at)
    ? `${stops} straight ahead already`
    : `it steers to ${lockWords(limit.at)} before ${stops}`;
}

function inputWords(steer: number): string {
  return isStraight(steer) ? "straight ahead" : `at ${lockWords(steer)}`;
}

function lowWords({ where, limit }: Told, model: Model, format: LengthFormat): string {
  const stops = stopWords(limit);
  if (limit.at <= model.setup.travel.droop) return `${inputWords(where)} ${stops} at full droop already`;
  const at = safeLength(limit.at, "down", format);
  const low = at === 0 ? "the measured height" : travelWords(at, format);
  return `${inputWords(where)} it comes down to ${low} before ${stops}`;
}
