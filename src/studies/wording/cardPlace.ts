import type { LengthFormat } from "../../units/formatLength.ts";
import type { NoLimits, SteerLimits } from "../map/steerLimits.ts";
import type { Model } from "../model/model.ts";
import type { CheckReport } from "../reports/check.ts";
import { clearsWords } from "./comparisonWords.ts";
import type { CardFacts } from "./counterFacts.ts";
import { amountWords } from "./lengths.ts";
import { heightWords, reportedPose, steerWords } from "./poseWords.ts";
import { verdictFacts } from "./verdictFacts.ts";

/**
 * Where a card's verdict is met, and that it is not where one looks: a card is of every height and steering angle, the pictures
 * beside it are of one height. "" where that has to be said of nothing.
 * @param travel the height shown, mm @param steering how far the truck steers there; null = not known yet
 */
export function cardPlace(
  report: CheckReport | null,
  travel: number,
  steering: SteerLimits | NoLimits | null,
  model: Model,
  format: LengthFormat,
): string {
  if (report === null) return "";
  const { verdict, told, always } = verdictFacts(report, model);
  if (told === null || verdict === "clear" || verdict === "unfinished") return "";
  const { entry, part } = told;
  if (entry.together) return `At every pose: the ${part}.`;
  const pose = reportedPose(model, entry.travel, entry.steer);
  const where = `${heightWords(entry.travel, model, format)}, ${steerWords(entry.steer, pose, entry.side)}`;
  const here = nothingTouches(steering, travel)
    ? ` ${capitalized(heightWords(travel, model, format))} nothing touches.`
    : "";
  const too =
    always === null ? "" : ` At every pose the ${always.part}, by ${amountWords(always.entry.gap, format)}.`;
  return `Worst ${where}.${verdict === "rubs" ? here : ""}${too}`;
}

/**
 * What a card comes to whose sign withholds that it clears, said beside that sign: `Everything clears by 3/8 in.`; "" for any
 * other card.
 */
export function cardComesTo(
  { state, mark }: CardFacts,
  report: CheckReport | null,
  model: Model,
  format: LengthFormat,
): string {
  if (report === null || state !== "clear" || mark === "clear") return "";
  const { told, scope } = verdictFacts(report, model);
  return told === null ? "" : `Everything ${clearsWords(told.entry.gap, scope, format)}.`;
}

/** Whether it is known that nothing touches at a height, as far as it steers there. */
function nothingTouches(steering: SteerLimits | NoLimits | null, travel: number): boolean {
  if (!steering?.ok || Math.abs(steering.travel - travel) > 1e-6) return false;
  const ends = [steering.leftTurn, steering.rightTurn].map(({ touch }) => touch.either.stop);
  return ends.every((stop) => stop !== "touch" && stop !== "unproven");
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
