import type { ApartPose, SolvedPose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";
import { KEPT } from "./frontEndLimit.ts";
import { type LimitMargin, type LimitPose, limitMargins } from "./limitsOf.ts";
import { marginsApart } from "./marginsApart.ts";

/** Every limit at a solved pose, wheels at one travel or each at its own. */
export function limitsAtPose(model: Model, pose: SolvedPose | ApartPose): LimitPose {
  return "travel" in pose ? limitMargins(model, pose.travel, pose.steer) : marginsApart(model, pose);
}

/** Those of a pose that are passed, the one past by the greatest share of its range first. */
export function limitsPastAt(pose: LimitPose): readonly LimitMargin[] {
  return pose.ok ? pose.margins.filter(({ margin }) => margin < -KEPT) : [];
}
