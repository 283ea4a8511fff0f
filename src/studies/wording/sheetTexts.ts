import type { LengthFormat } from "../../units/formatLength.ts";
import type { ToldVerdict } from "../doubts/doubt.ts";
import type { HeightStop } from "../limits/heightWay.ts";
import type { NoLimits, SteerLimits } from "../map/steerLimits.ts";
import type { Model } from "../model/model.ts";
import { type HeightFacts, heightClause, heightFacts } from "./heightWords.ts";
import { amountText } from "./lengths.ts";
import { heightWords, reportedPose, steerWords } from "./poseWords.ts";
import { type SteerStop, steerStop } from "./stopFacts.ts";
import { steerSheetText } from "./stopTexts.ts";
import type { ToldEntry, VerdictFacts } from "./verdictFacts.ts";

/** A truck's nearest place over the whole range: `tire rubs the fender lip by 1/4 in, left side, at …`. */
export function worstText(
  { told, always, verdict }: VerdictFacts,
  model: Model,
  format: LengthFormat,
): string {
  if (told === null) return "nothing is measured";
  const { entry, twin } = told;
  const pose = reportedPose(model, entry.travel, entry.steer);
  const when = entry.together
    ? "at every pose"
    : `${heightWords(entry.travel, model, format)}, ${steerWords(entry.steer, pose, entry.side)}`;
  const side = twin === null ? `${entry.side} side` : "both sides";
  const too = always === null ? "" : `; at every pose ${whatText(always, "rubs", format)}`;
  return `${whatText(told, verdict, format)}, ${side}, ${when}${too}`;
}

function whatText({ entry, surface, part }: ToldEntry, verdict: ToldVerdict, format: LengthFormat): string {
  const amount = amountText(entry.gap, format);
  switch (verdict) {
    case "rubs":
      return `${surface} rubs the ${part} by ${amount}`;
    case "close":
      return `close: ${amount} from the ${surface} to the ${part}`;
    case "unfinished":
      return `so far ${amount} from the ${surface} to the ${part}`;
    case "clear":
      return `${amount} from the ${surface} to the ${part}`;
  }
}

/** How far a truck steers at a height, both ways, before it is words; or why it cannot stand there. */
export type TurnFacts =
  | { readonly stands: true; readonly left: SteerStop; readonly right: SteerStop }
  | { readonly stands: false; readonly height: HeightFacts };

/** @param height what keeps the truck from that height; null = it stands there */
export function turnFacts(
  steering: SteerLimits | NoLimits,
  height: HeightStop | null,
  model: Model,
  format: LengthFormat,
): TurnFacts {
  const { travel } = steering;
  if (height !== null) return { stands: false, height: heightFacts(travel, height, format) };
  if (!steering.ok) throw new TypeError(`turnFacts: no steering at ${travel} mm, where the truck stands`);
  const stopOf = (turn: "leftTurn" | "rightTurn") => steerStop(steering[turn].touch.either, travel, model);
  return { stands: true, left: stopOf("leftTurn"), right: stopOf("rightTurn") };
}

/** How far it steers at a height, to the left and to the right; or why it cannot stand there. */
export function steerText(facts: TurnFacts, model: Model, format: LengthFormat): string {
  if (!facts.stands) return heightClause(facts.height, model, format);
  const { left, right } = facts;
  const both = steerSheetText(left, true);
  return both === steerSheetText(right, true)
    ? both
    : `left ${steerSheetText(left, false)}; right ${steerSheetText(right, false)}`;
}
