import { jointOf } from "../../suspension/poseStatus.ts";
import type { ApartPose, OutOfReach, SolvedPose } from "../../suspension/solvePose.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import type { GapEntry } from "../reports/gapsAt.ts";
import { amountWords } from "./amountWords.ts";
import { floorOf } from "./floorOf.ts";
import { pastSentence } from "./pastLimitSentence.ts";
import { placeWords } from "./placeWords.ts";
import { type PoseFacts, poseFacts } from "./poseFacts.ts";
import { heightWords, lockWords, safeTravelWords, steerWords } from "./poseWords.ts";

/**
 * What touches what at one pose, in one plain sentence: the nearest part, how near, where, at which height and steering
 * angle; how many more are too near; and in another which limits it passes. @param gaps all of that pose, in any order
 */
export function poseSentence(
  gaps: readonly GapEntry[],
  pose: SolvedPose | ApartPose | OutOfReach,
  model: Model,
  format: LengthFormat,
): string {
  if (!pose.ok) return outOfReachSentence(pose, format);
  const facts = poseFacts(gaps, pose, model);
  const { others } = facts;
  const rest = others === 0 ? "" : `${others} more ${others === 1 ? "place is" : "places are"} too near.`;
  return [gapSentence(facts, pose, model, format), rest, pastSentence(facts.past, format)]
    .filter((sentence) => sentence !== "")
    .join(" ");
}

function gapSentence(
  { nearest }: PoseFacts,
  pose: SolvedPose | ApartPose,
  model: Model,
  format: LengthFormat,
): string {
  if (nearest === null)
    return "This setup has no body parts and no moving parts, so there is nothing to rub.";
  const { entry, verdict, surface, part } = nearest;
  const heights =
    "travel" in pose ? heightWords(pose.travel, model, format) : apartWords(pose, model, format);
  const when = `${heights}, ${steerWords(pose.steer, pose, entry.side)}`;
  const what = `the ${entry.side} ${surface}`;
  const amount = amountWords(entry.gap, format);
  const place = entry.together ? "at every pose" : placeWords(entry.point, floorOf(pose), format);
  const told = () => {
    switch (verdict) {
      case "rubs":
        return `${what} rubs the ${part} by ${amount}, ${place}`;
      case "close": {
        const asked = formatLength(model.setup.allowance, format);
        return `${what} is ${amount} from the ${part}, ${place}; you asked for ${asked}`;
      }
      case "clear":
        return `everything clears, the ${part} closest at ${amount} from ${what}`;
    }
  };
  return `${when.charAt(0).toUpperCase()}${when.slice(1)}: ${told()}.`;
}

function outOfReachSentence({ side, status, along, startsAt }: OutOfReach, format: LengthFormat): string {
  const limit = along === "travel" ? safeTravelWords(startsAt, format) : lockWords(startsAt);
  return `The ${side} ${jointOf(status)} cannot reach this pose; it goes as far as ${limit}.`;
}

/** `the left wheel at 1 in of bump, the right wheel at the measured height`. */
function apartWords({ travels }: ApartPose, model: Model, format: LengthFormat): string {
  const side = (name: "left" | "right") => `the ${name} wheel ${heightWords(travels[name], model, format)}`;
  return `${side("left")}, ${side("right")}`;
}
