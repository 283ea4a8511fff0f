import type { LengthFormat } from "../../units/formatLength.ts";
import { canStand, type HeightStop, heightStop } from "../limits/heightWay.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { limitStopper, limitThing } from "./limitSentences.ts";
import { nameOfHeight, travelWords } from "./poseWords.ts";
import { safeLength } from "./safeSide.ts";

/** Why a truck cannot stand at a height, before it is words. */
export interface HeightFacts {
  /** mm. The height asked for. */
  readonly travel: number;
  readonly stop: HeightStop["stop"];
  /** The limit or joint that stops it. */
  readonly name: string;
  /** mm, as told: no farther than is proven; null where that is not known. */
  readonly at: number | null;
}

export function heightFacts(travel: number, stop: HeightStop, format: LengthFormat): HeightFacts {
  const at = stop.at === null ? null : safeLength(stop.at, stop.at < 0 ? "up" : "down", format);
  switch (stop.stop) {
    case "limit":
      return { travel, stop: stop.stop, name: stop.name, at };
    case "reach":
      return { travel, stop: stop.stop, name: `${stop.side} ${stop.joint}`, at };
  }
}

/** The same as a sentence of its own. */
export function heightSentence(facts: HeightFacts, model: Model, format: LengthFormat): string {
  return `The truck ${heightClause(facts, model, format)}.`;
}

/**
 * What keeps a truck from a height, where anything does; null = it stands there. Costs a march along the travel only where
 * it does not. @param travel mm. @param budget once it is spent, where it is stopped is not told
 */
export function barredAt(
  travel: number,
  model: Model,
  format: LengthFormat,
  budget: Budget,
): HeightFacts | null {
  if (canStand(model, travel, 0)) return null;
  const stop = heightStop(model, travel, budget);
  return stop && heightFacts(travel, stop, format);
}

/** `cannot come down to “aired out”: the air spring stops it at 1 3/4 in of bump`: a clause that follows the truck's name. */
export function heightClause(facts: HeightFacts, model: Model, format: LengthFormat): string {
  const { travel, stop, at } = facts;
  const where = nameOfHeight(travel, model, format);
  const cannot =
    at === null ? `cannot stand at ${where}` : `cannot come ${travel > at ? "down" : "up"} to ${where}`;
  const height = at === null ? "" : at === 0 ? "the measured height" : travelWords(at, format);
  switch (stop) {
    case "limit":
      return at === null
        ? `${cannot}: that is past the ${limitThing(facts.name)}`
        : `${cannot}: the ${limitStopper(facts.name)} stops it at ${height}`;
    case "reach":
      return at === null
        ? `${cannot}: the ${facts.name} cannot follow`
        : `${cannot}: the ${facts.name} cannot follow past ${height}`;
  }
}
