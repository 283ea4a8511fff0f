import type { LengthFormat } from "../../units/formatLength.ts";
import type { HeightStop } from "../limits/heightWay.ts";
import type { NoLimits, SteerLimits } from "../map/steerLimits.ts";
import type { Model } from "../model/model.ts";
import type { CheckReport } from "../reports/check.ts";
import { amountText } from "./amountText.ts";
import { heightClause, heightFacts } from "./heightWords.ts";
import { heightWords, reportedPose, steerWords } from "./poseWords.ts";
import { steerStop } from "./stopFacts.ts";
import { steerSheetText } from "./stopTexts.ts";
import { type ToldEntry, verdictFacts } from "./verdictFacts.ts";

/** A truck's nearest place over the whole range: `tire rubs the fender lip by 1/4 in, left side, at …`. */
export function worstText(report: CheckReport, model: Model, format: LengthFormat): string {
  const { verdict, told } = verdictFacts(report, model);
  if (told === null) return "nothing is measured";
  const { entry, twin } = told;
  const pose = reportedPose(model, entry.travel, entry.steer);
  const when = entry.together
    ? "always"
    : `${heightWords(entry.travel, model, format)}, ${steerWords(entry.steer, pose, entry.side)}`;
  const side = `${entry.side} side${twin === null ? "" : ", mirrored on the other"}`;
  return `${verdict === "unfinished" ? soFarText(told, format) : whatText(told, format)}, ${side}, ${when}`;
}

function soFarText({ entry, surface, part }: ToldEntry, format: LengthFormat): string {
  return `so far ${amountText(entry.gap, format)} from the ${surface} to the ${part}`;
}

function whatText({ entry, surface, part }: ToldEntry, format: LengthFormat): string {
  const amount = amountText(entry.gap, format);
  switch (entry.verdict) {
    case "rubs":
      return `${surface} rubs the ${part} by ${amount}`;
    case "close":
      return `close: ${amount} from the ${surface} to the ${part}`;
    case "clear":
      return `${amount} from the ${surface} to the ${part}`;
  }
}

/** How far it steers at a height, to the left and to the right; or why it cannot stand there. */
export function steerText(
  steering: SteerLimits | NoLimits,
  height: HeightStop | null,
  model: Model,
  format: LengthFormat,
): string {
  const { travel } = steering;
  if (height !== null) return heightClause(heightFacts(travel, height, format), model, format);
  if (!steering.ok) throw new TypeError(`steerText: no steering at ${travel} mm, where the truck stands`);
  const stops = [steering.leftTurn, steering.rightTurn].map(({ touch }) =>
    steerStop(touch.either, travel, model),
  );
  const [left, right] = stops.map(steerSheetText);
  if (left === right && stops[0]?.isNowhere) return left ?? "";
  return left === right ? `both ways ${left}` : `left ${left}; right ${right}`;
}
