import type { GapEntry } from "../../studies/gapsAt.ts";
import { jointOf } from "../../suspension/poseStatus.ts";
import type { PoseResult, SolvedPose } from "../../suspension/solvePose.ts";
import { floorOf } from "../state/floorOf.ts";
import type { Truck } from "../state/truck.ts";
import { amountText } from "./amountText.ts";
import { gapWord } from "./gapWord.ts";
import { placeWords } from "./placeWords.ts";
import { steerWords, travelWords } from "./poseWords.ts";
import { ringSurface } from "./ringSurface.ts";

/**
 * What touches what at this pose, in one plain sentence (and a count of the rest): what, how much, where,
 * at which height and steering angle. @param gaps smallest first
 */
export function poseSentence(truck: Truck, pose: PoseResult, gaps: readonly GapEntry[]): string {
  const { setup } = truck;
  if (!pose.ok) {
    const limit =
      pose.along === "travel"
        ? travelWords(pose.startsAt, setup)
        : `${Math.round(Math.abs(pose.startsAt) * 100)}% of ${pose.startsAt < 0 ? "right" : "left"} lock`;
    return `The ${pose.side} ${jointOf(pose.status)} cannot reach this pose; it goes as far as ${limit}.`;
  }
  const worst = gaps[0];
  if (!worst) return "This setup has no body parts, so there is nothing to touch.";
  const when = whenWords(truck, pose, worst);
  const { allowance } = setup;
  const word = gapWord(worst.gap, allowance);
  const what = `the ${worst.side} ${surface(truck, pose, worst)}`;
  const where = placeWords(worst.point, floorOf(pose), setup);
  if (word === "clear") {
    return `${when}, nothing is nearer than the ${amountText(allowance, setup)} allowance: ${what} clears the ${worst.part} by ${amountText(worst.gap, setup)}.`;
  }
  const how =
    word === "rubs"
      ? `is ${amountText(worst.gap, setup)} into the ${worst.part}`
      : `is ${amountText(worst.gap, setup)} from the ${worst.part}, inside the ${amountText(allowance, setup)} allowance`;
  const others = gaps.filter((entry) => gapWord(entry.gap, allowance) !== "clear").length - 1;
  const rest = others > 0 ? ` ${others} more ${others === 1 ? "place is" : "places are"} too near.` : "";
  return `${when}, ${what} ${how}, ${where}.${rest}`;
}

function whenWords(truck: Truck, pose: SolvedPose, entry: GapEntry): string {
  const height = travelWords(pose.travel, truck.setup);
  const steer = steerWords(pose.steer, pose[entry.side].steerAngle);
  const turned = steer === "straight ahead" ? steer : `turned ${steer}`;
  return `${height.charAt(0).toUpperCase()}${height.slice(1)}, ${turned}`;
}

function surface(truck: Truck, pose: SolvedPose, entry: GapEntry): "tire" | "wheel" {
  const side = pose[entry.side];
  return ringSurface(entry.onRing, side.wheelCenter, side.wheelAxis, truck.model.tire.profile);
}
