import type { Side } from "../../suspension/frontEnd.ts";
import type { ApartPose, SolvedPose } from "../../suspension/solvePose.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import type { Model } from "../model/model.ts";
import { KEPT } from "./frontEndLimit.ts";
import { LimitStatus } from "./limitStatus.ts";
import { type LimitMargin, type LimitPose, limitMargins } from "./limitsOf.ts";

/** Every limit at a solved pose, wheels at one travel or each at its own. */
export function limitsAtPose(model: Model, pose: SolvedPose | ApartPose): LimitPose {
  return "travel" in pose ? limitMargins(model, pose.travel, pose.steer) : marginsApart(model, pose);
}

/** Those of a pose that are passed, the one past by the greatest share of its range first. */
export function limitsPastAt(pose: LimitPose): readonly LimitMargin[] {
  return pose.ok ? pose.margins.filter(({ margin }) => margin < -KEPT) : [];
}

/**
 * Sides of which a check does not count a pose, since it passes limits: both, or where the body rolls each wheel for itself.
 * @param limitedBy as in the check's report: empty where no pose is left out
 */
export function uncountedSides(
  model: Model,
  pose: SolvedPose,
  limitedBy: readonly string[] = [],
): readonly Side[] {
  const past = limitedBy.length === 0 ? [] : limitsPastAt(limitsAtPose(model, pose));
  const isAlone = model.setup.roll !== null;
  return (["left", "right"] as const).filter((side) => past.some((one) => !isAlone || one.side === side));
}

/** Every limit at a pose whose wheels stand at travels of their own, each by its own wheel's, ranked; `travel` is their mean. */
function marginsApart(model: Model, pose: ApartPose): LimitPose {
  const { travels, steer } = pose;
  const ends = new Float64Array(INNER_ENDS_ROW);
  model.frontEnd.steering.innerEndsTo(ends, steer);
  const margins = (["left", "right"] as const).flatMap((side): LimitMargin[] => {
    const status = new LimitStatus(model, side);
    const found = new Float64Array(status.limits.length);
    status.marginsTo(found, pose[side].row, 0, ends, 0, travels[side], steer);
    return status.limits.map(({ name, measure, range }, i) => {
      const margin = found[i]!;
      return { side, name, measure, margin, share: margin / range };
    });
  });
  margins.sort((a, b) => a.share - b.share);
  return { ok: true, travel: 0.5 * (travels.left + travels.right), steer, margins };
}
