import type { Limit } from "../../studies/map/limit.ts";
import type { LowestTravels } from "../../studies/map/lowestTravels.ts";
import type { NoLimits, SteerLimits } from "../../studies/map/steerLimits.ts";
import type { Model } from "../../studies/model.ts";
import { isStraight } from "../../studies/sentencePose.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { angleText } from "../words/angleText.ts";
import { travelText } from "../words/poseWords.ts";

/** How far one way it can be steered at a height: `to 40 % (24.9° at the left wheel), then the fender lip touches…`. */
function steerLimitText(limit: Limit, travel: number, model: Model): string {
  if (limit.stop === "end") return "to the lock";
  const share = `${Math.floor(100 * Math.abs(limit.at))}% of lock`;
  const pose = solvePose(model.frontEnd, travel, limit.at * (1 - 1e-9));
  const side = "side" in limit ? limit.side : "left";
  const angle = pose.ok ? ` (${side} wheel at ${angleText(Math.abs(pose[side].steerAngle), 0)})` : "";
  const isNone = isStraight(limit.at);
  if (limit.stop === "touch") {
    return isNone
      ? `not at all: the ${limit.part} touches on the ${limit.side}`
      : `to ${share}${angle}; then the ${limit.part} touches on the ${limit.side}`;
  }
  if (limit.stop === "reach") return `to ${share}${angle}; then the ${limit.side} ${limit.joint} ends`;
  return `to ${share}; past it nothing is proven`;
}

/** How low it can go at a steer. */
export function lowTexts(lowering: LowestTravels | NoLimits, format: LengthFormat): string {
  if (!lowering.ok) return "the linkage cannot go there";
  const { from, either } = lowering.touch;
  if (either.stop === "end") return "all the way down";
  const low = travelText(either.at, format);
  if (either.stop === "touch") {
    return either.at <= from && from < 0
      ? `not at all: even at full droop the ${either.part} touches on the ${either.side}`
      : `to ${low}; then the ${either.part} touches on the ${either.side}`;
  }
  if (either.stop === "reach") return `to ${low}; then the ${either.side} ${either.joint} ends`;
  return `to ${low}; past it nothing is proven`;
}

/** Both ways of steering at a height. */
export function steerTexts(
  steering: SteerLimits | NoLimits,
  model: Model,
): { readonly left: string; readonly right: string } {
  if (!steering.ok) return { left: "the linkage cannot go there", right: "the linkage cannot go there" };
  const { travel, leftTurn, rightTurn } = steering;
  return {
    left: steerLimitText(leftTurn.touch.either, travel, model),
    right: steerLimitText(rightTurn.touch.either, travel, model),
  };
}
