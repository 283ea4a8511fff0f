import type { LengthFormat } from "../../units/formatLength.ts";
import type { AlwaysNear, MapReport } from "../map/mapReport.ts";
import type { Stop } from "../map/stop.ts";
import type { Model } from "../model/model.ts";
import { amountWords, isSame } from "./lengths.ts";
import { partWords, surfaceOfPair } from "./nearestSurface.ts";
import { heightWords, inputWords, isStraight, lockWords, travelWords } from "./poseWords.ts";
import { safeLength } from "./safeSide.ts";
import { type StopFacts, stopFacts } from "./stopFacts.ts";
import { stopWords } from "./stopTexts.ts";

/** One way of a map, with where it is told for and where it ends. */
interface ToldWay {
  readonly stop: StopFacts;
  /** The travel, mm, or the steer that it is told for. */
  readonly where: number;
  /** The steer, or the travel, mm, at which it is stopped. */
  readonly at: number;
}

/** What the sentence of a map is made of. */
type MapFacts =
  /** What rides with the wheel rubs: it leaves no way to tell of. */
  | { readonly kind: "always"; readonly rubs: readonly AlwaysNear[] }
  | {
      readonly kind: "ways";
      /** The least of the ways of steering, and of those of coming down, that a touch or a limit ends; null = none is. */
      readonly turn: ToldWay | null;
      readonly low: ToldWay | null;
      /** Some way ends where no more is known. */
      readonly isOpen: boolean;
      readonly passesLimit: boolean;
    };

function mapFacts(report: MapReport, model: Model): MapFacts {
  const { steerAtHeight, lowestAtSteer, passesLimit, always } = report;
  const rubs = always.filter(({ gap }) => gap < 0);
  if (rubs.length > 0) return { kind: "always", rubs };
  const turns = steerAtHeight.flatMap((row) =>
    row.ok ? [row.leftTurn, row.rightTurn].map(({ touch }) => way(touch.either, row.travel, 0, model)) : [],
  );
  const lows = lowestAtSteer.flatMap((row) =>
    row.ok ? [way(row.touch.either, row.steer, row.touch.from, model)] : [],
  );
  return {
    kind: "ways",
    turn: leastOf(turns, ({ at }) => Math.abs(at)),
    low: leastOf(lows, ({ at }) => at),
    isOpen: [...turns, ...lows].some(({ stop }) => stop.stop === "unproven") || report.cutShort === true,
    passesLimit,
  };
}

/**
 * The tightest of the heights and of the steering inputs of a map, in one plain sentence: at which height it steers
 * least, and at which steering input it stays highest, before something touches or a limit is met.
 */
export function mapSentence(report: MapReport, model: Model): string {
  const format: LengthFormat = { units: model.setup.units };
  const facts = mapFacts(report, model);
  switch (facts.kind) {
    case "always":
      return alwaysWords(facts.rubs, model, format);
    case "ways": {
      const { turn, low, isOpen, passesLimit } = facts;
      const told = [
        turn === null ? "" : `${heightWords(turn.where, model, format)} ${steerWords(turn)}`,
        low === null ? "" : lowWords(low, model, format),
      ].filter((half) => half !== "");
      if (told.length > 0) return `${capitalized(told.join("; "))}.`;
      if (isOpen) return "Nothing was found to touch, but the search was not finished.";
      const kept = passesLimit ? " that keeps the limits" : "";
      return `Nothing touches at any height or steering input below${kept}.`;
    }
  }
}

function way(end: Stop, where: number, from: number, model: Model): ToldWay {
  return { stop: stopFacts(end, end.at === from, null, model), where, at: end.at };
}

/** A height or steering input that passes a limit where its way starts is nowhere to go on from: not told. */
function isTold({ stop: { stop, isNowhere } }: ToldWay): boolean {
  switch (stop) {
    case "touch":
      return true;
    case "limit":
      return !isNowhere;
    case "end":
    case "reach":
    case "unproven":
      return false;
  }
}

function leastOf(ways: readonly ToldWay[], size: (each: ToldWay) => number): ToldWay | null {
  let least: ToldWay | null = null;
  for (const each of ways.filter(isTold)) if (least === null || size(each) < size(least)) least = each;
  return least;
}

function steerWords({ stop, at }: ToldWay): string {
  const stops = stopWords(stop);
  return isStraight(at) ? `${stops} straight ahead already` : `it steers to ${lockWords(at)} before ${stops}`;
}

function lowWords({ stop, where, at }: ToldWay, model: Model, format: LengthFormat): string {
  const stops = stopWords(stop);
  if (at <= model.setup.travel.droop) return `${inputWords(where)} ${stops} at full droop already`;
  const told = safeLength(at, "down", format);
  const low = told === 0 ? "the measured height" : travelWords(told, format);
  return `${inputWords(where)} it comes down to ${low} before ${stops}`;
}

/** What rides with the wheel and rubs: `The tire rubs the tie rod end by 1/4 in on both sides at every pose.` */
function alwaysWords(rubs: readonly AlwaysNear[], model: Model, format: LengthFormat): string {
  const told = rubs.reduce((worst, one) =>
    one.gap < worst.gap && !isSame(one.gap, worst.gap) ? one : worst,
  );
  const isTwin = rubs.some(
    (one) => one.part === told.part && one.side !== told.side && isSame(one.gap, told.gap),
  );
  const where = isTwin ? "on both sides" : `on the ${told.side}`;
  const surface = surfaceOfPair(model, told.side, told.part);
  const part = partWords(model, told.side, told.part);
  return `The ${surface} rubs the ${part} by ${amountWords(told.gap, format)} ${where} at every pose.`;
}

function capitalized(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
