import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { BeforeLock, NearerBefore } from "../map/beforeLock.ts";
import type { LowestTravels } from "../map/lowestTravels.ts";
import type { Model } from "../model/model.ts";
import { gapWord } from "./gapTexts.ts";
import { amountWords } from "./lengths.ts";
import { nearestSurface, partWords, type Surface } from "./nearestSurface.ts";
import { inputWords } from "./poseWords.ts";
import { lowStop } from "./stopFacts.ts";
import { type LowWayParts, lowWayParts } from "./stopTexts.ts";

/** How low the truck goes at one steering angle: keeping the allowance, and before something touches. */
export function lowestParts(
  { steer, touch, allowance }: LowestTravels,
  model: Model,
  format: LengthFormat,
): LowWayParts {
  const [kept, end] = [allowance, touch].map((way) => lowStop(way, steer, model, format));
  return lowWayParts(kept!, end!, model.setup.allowance, format);
}

/** Whether a truck comes less low short of a full lock than there, as it is told. */
export function isHigherBefore({ full, higher }: BeforeLock, model: Model, format: LengthFormat): boolean {
  if (higher === null) return false;
  const [there, before] = [full, higher].map((way) => JSON.stringify(lowestParts(way, model, format)));
  return there !== before;
}

/** In place of what a full lock has told of it, short of one. */
export const TOLD_AT_LOCK = "Turn to a full lock to see whether it is worse on the way there.";

/** In place of what `nearerBeforeSentence` tells at a full lock, short of one. */
export const NEARER_TOLD_AT_LOCK =
  "Turn to a full lock to see whether it comes nearer on the way there, at this height.";

/** Of a full lock before which `nearerBeforeSentence` has nothing to tell. */
export const NOWHERE_NEARER =
  "At every tenth of lock from half lock on it keeps the allowance or comes no nearer than here.";

/** That the truck comes as low at every steering input looked at short of a full lock, as far as that is proven. */
export function nowhereHigherSentence({ isWhole }: BeforeLock): string {
  return isWhole
    ? "At no tenth of lock from half lock on is it worse."
    : "Not every tenth of lock from half lock on was looked at to its end.";
}

/**
 * What a full lock does not show: that it comes nearer on the way there at the same height, in a plain sentence; "" where that
 * is still as much as was asked for, or reads as at the lock.
 */
export function nearerBeforeSentence(
  { steer, entry, atLock }: NearerBefore,
  travel: number,
  model: Model,
  format: LengthFormat,
): string {
  const word = gapWord(entry.gap, model.setup.allowance);
  const pose = solvePose(model.frontEnd, travel, steer);
  const amount = amountWords(entry.gap, format);
  if (word === "clear" || !pose.ok) return "";
  if (word === gapWord(atLock, model.setup.allowance) && amount === amountWords(atLock, format)) return "";
  const what = `the ${entry.side} ${nearestSurface(model, pose, entry.side, entry.part)}`;
  const part = partWords(model, entry.side, entry.part);
  const near =
    word === "rubs" ? `${what} rubs the ${part} by ${amount}` : `${what} is ${amount} from the ${part}`;
  return nearerWords(steer, near);
}

/** As long as `nearerBeforeSentence` may get of a truck: what its room is kept by. */
export function longestNearerSentence(model: Model, format: LengthFormat): string {
  const whats = model.pairs.map(({ solid, partName }) => {
    const surface: Surface = solid === "ring" ? "wheel" : solid;
    return `the right ${surface} is ${amountWords(0, format)} from the ${partName}`;
  });
  return nearerWords(
    -0.9,
    whats.reduce((longest, one) => (one.length > longest.length ? one : longest), ""),
  );
}

function nearerWords(steer: number, near: string): string {
  return `On the way there it is worse: ${inputWords(steer)} ${near}.`;
}
