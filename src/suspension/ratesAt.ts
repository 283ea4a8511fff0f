import { vecAt } from "../geometry/vec.ts";
import { armAngleFor, travelStatus } from "./armAngle.ts";
import type { FrontEnd, Side } from "./frontEnd.ts";
import { POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { INNER_ENDS_ROW } from "./steering.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "./wheelRates.ts";

/** A pose of one side with its exact first derivatives; rows as `POSE` and `RATE`, left-hand frame. */
export interface RatesAt {
  readonly pose: Float64Array;
  /** Per radian of lower arm, steering held, and per unit of steer, arm held. */
  readonly rates: Float64Array;
  /** mm of travel per radian of lower arm: travel is measured straight ahead, so this is the straight-ahead pose's. */
  readonly rise: number;
}

/** One side at a travel (mm) and steer. @returns null where the pose is out of reach */
export function ratesAt(frontEnd: FrontEnd, side: Side, travel: number, steer: number): RatesAt | null {
  const model = frontEnd[side];
  if (travelStatus(model, travel) !== PoseStatus.Ok) return null;
  const ends = new Float64Array(INNER_ENDS_ROW);
  if (frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return null;
  const angle = armAngleFor(model, travel);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const pose = new Float64Array(POSE_ROW);
  const rates = new Float64Array(RATE_ROW);
  if (poseRowTo(pose, 0, model.row, cos, sin, ...model.innerAtRest) !== PoseStatus.Ok) return null;
  wheelRatesTo(rates, 0, model.row, pose, 0, cos, sin);
  const rise = rates[RATE.armSlide + 2]!;
  const at = side === "left" ? 0 : 3;
  if (poseRowTo(pose, 0, model.row, cos, sin, ...vecAt(ends, at)) !== PoseStatus.Ok) return null;
  wheelRatesTo(rates, 0, model.row, pose, 0, cos, sin, ...vecAt(ends, at + 6));
  return { pose, rates, rise };
}
