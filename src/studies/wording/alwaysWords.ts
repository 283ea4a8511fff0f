import type { LengthFormat } from "../../units/formatLength.ts";
import type { AlwaysNear } from "../map/mapReport.ts";
import type { Model } from "../model/model.ts";
import { amountWords } from "./amountWords.ts";
import { partWords, surfaceOfPair } from "./nearestSurface.ts";

/** mm. Two sides this near each other do the same. */
const ALIKE = 1e-6;

/** What rides with the wheel and rubs: `The tire rubs the tie rod end by 1/4 in on both sides at every height and steering angle.` */
export function alwaysWords(rubs: readonly AlwaysNear[], model: Model, format: LengthFormat): string {
  const told = rubs.reduce((worst, one) => (one.gap < worst.gap - ALIKE ? one : worst));
  const isTwin = rubs.some(
    (one) => one.part === told.part && one.side !== told.side && Math.abs(one.gap - told.gap) < ALIKE,
  );
  const where = isTwin ? "on both sides" : `on the ${told.side}`;
  const surface = surfaceOfPair(model, told.side, told.part);
  const part = partWords(model, told.side, told.part);
  return `The ${surface} rubs the ${part} by ${amountWords(told.gap, format)} ${where} at every height and steering angle.`;
}
