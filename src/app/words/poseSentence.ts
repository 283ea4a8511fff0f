import type { GapEntry } from "../../studies/gapsAt.ts";
import { limitMargins } from "../../studies/limits/limitsOf.ts";
import { amountText } from "../../studies/wording/amountText.ts";
import { gapWord } from "../../studies/wording/gapWord.ts";
import { nearestSurface, partWords } from "../../studies/wording/nearestSurface.ts";
import { pastLimitSentence } from "../../studies/wording/pastLimitSentence.ts";
import { placeWords } from "../../studies/wording/placeWords.ts";
import { heightText, travelText } from "../../studies/wording/poseText.ts";
import { lockWords, steerWords } from "../../studies/wording/poseWords.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import type { OutOfReach, PoseResult, SolvedPose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { floorOf } from "../state/floorOf.ts";
import type { Truck } from "../state/truck.ts";

/**
 * What touches what at this pose, in one plain sentence (and a count of the rest): what, how much, where,
 * at which height and steering angle; and in another which limits it passes. @param gaps smallest first
 */
export function poseSentence(
  truck: Truck,
  pose: PoseResult,
  gaps: readonly GapEntry[],
  format: LengthFormat = truck.setup,
): string {
  if (!pose.ok) return reachSentence(pose, format);
  const past = pastLimitSentence(limitMargins(truck.model, pose.travel, pose.steer), format);
  return past === ""
    ? gapSentence(truck, pose, gaps, format)
    : `${gapSentence(truck, pose, gaps, format)} ${past}`;
}

function gapSentence(
  truck: Truck,
  pose: SolvedPose,
  gaps: readonly GapEntry[],
  format: LengthFormat,
): string {
  const { setup, model } = truck;
  const worst = tellingGap(truck, gaps);
  if (!worst) return "This setup has no body parts and no moving parts, so there is nothing to rub.";
  const { allowance } = setup;
  const when = `${capitalized(heightText(pose.travel, setup, format))}, ${steerWords(pose.steer, pose, worst.side)}`;
  const what = `the ${worst.side} ${nearestSurface(model, pose, worst.side, worst.part)}`;
  const part = partWords(model, worst.side, worst.part);
  const amount = amountText(worst.gap, format);
  const word = gapWord(worst.gap, allowance);
  if (word === "clear") {
    return `${when}, nothing is nearer than the ${amountText(allowance, format)} allowance: ${what} clears the ${part} by ${amount}.`;
  }
  const how =
    word === "rubs"
      ? `is ${amount} into the ${part}`
      : `is ${amount} from the ${part}, inside the ${amountText(allowance, format)} allowance`;
  const others = gaps.filter((entry) => gapWord(entry.gap, allowance) !== "clear").length - 1;
  const rest = others > 0 ? ` ${others} more ${others === 1 ? "place is" : "places are"} too near.` : "";
  return `${when}, ${what} ${how}, ${placeWords(worst.point, floorOf(pose), format)}.${rest}`;
}

/** The nearest gap; of those that are clear, rather one that changes with the pose than one that never does. */
function tellingGap({ model, setup }: Truck, gaps: readonly GapEntry[]): GapEntry | undefined {
  const [nearest] = gaps;
  if (nearest === undefined || gapWord(nearest.gap, setup.allowance) !== "clear") return nearest;
  const rides = ({ part, side }: GapEntry) =>
    model.pairs.some((pair) => pair.name === part && pair.side === side && pair.kind === "together");
  return gaps.find((entry) => !rides(entry)) ?? nearest;
}

function reachSentence({ side, status, along, startsAt }: OutOfReach, format: LengthFormat): string {
  const limit = along === "travel" ? travelText(startsAt, format) : lockWords(startsAt);
  return `The ${side} ${jointOf(status)} cannot reach this pose; it goes as far as ${limit}.`;
}

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
