import { solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Limit } from "../map/limit.ts";
import type { LowestTravels } from "../map/lowestTravels.ts";
import type { NoLimits, SteerLimits } from "../map/steerLimits.ts";
import type { Model } from "../model.ts";
import { angleText } from "./angleText.ts";
import { travelText } from "./poseText.ts";
import { isStraight } from "./poseWords.ts";

/** How far one way it can be steered at a height: `39% of lock (11° left wheel), then fender lip, left side`. */
function steerLimitText(limit: Limit, travel: number, model: Model): string {
  if (limit.stop === "end") return "the lock";
  const share = `${Math.floor(100 * Math.abs(limit.at))}% of lock`;
  if (limit.stop === "unproven") return `${share}; past it nothing is proven`;
  const pose = solvePose(model.frontEnd, travel, limit.at * (1 - 1e-9));
  const { side } = limit;
  if (limit.stop === "limit")
    return isStraight(limit.at) ? `nowhere: past ${limit.name}` : `${share}, then ${limit.name}`;
  const angle = pose.ok ? ` (${angleText(Math.abs(pose[side].steerAngle), 0)} ${side} wheel)` : "";
  if (limit.stop === "reach") return `${share}${angle}, then the ${side} ${limit.joint} ends`;
  if (isStraight(limit.at)) return `nowhere: ${limit.part} touches, ${side} side`;
  return `${share}${angle}, then ${limit.part}, ${side} side`;
}

/** How low it can go at a steer. */
export function lowTexts(lowering: LowestTravels | NoLimits, format: LengthFormat): string {
  if (!lowering.ok) return "the linkage cannot go there";
  const { from, either } = lowering.touch;
  if (either.stop === "end") return "full bump";
  const low = travelText(either.at, format);
  if (either.stop === "unproven") return `${low}; past it nothing is proven`;
  if (either.stop === "limit")
    return either.at === from ? `nowhere: past ${either.name}` : `${low}, then ${either.name}`;
  if (either.stop === "reach") return `${low}, then the ${either.side} ${either.joint} ends`;
  return either.at <= from && from < 0
    ? `nowhere: even at full droop ${either.part} touches, ${either.side} side`
    : `${low}, then ${either.part}, ${either.side} side`;
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
