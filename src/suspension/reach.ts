import type { Vec3 } from "../geometry/vec.ts";
import { POSE, POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { REACH_LIMIT, REACH_STEP } from "./tolerances.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "./wheelRates.ts";

/** One end of the lower arm's reach with the steering straight ahead. */
export interface ReachEnd {
  /** Lower arm angle from the measured pose, rad, + = up. The pose there exists. */
  readonly armAngle: number;
  /** Travel at that angle, mm. */
  readonly travel: number;
  /** What stops it there. */
  readonly status: PoseStatus;
}

export interface Reach {
  readonly droop: ReachEnd;
  readonly bump: ReachEnd;
}

/** Finds how far the lower arm can turn down and up while the linkage closes and the wheel keeps rising with it. */
export function reachOf(side: Float64Array, inner: Vec3, restHeight: number): Reach {
  return { droop: reachEnd(side, inner, restHeight, -1), bump: reachEnd(side, inner, restHeight, 1) };
}

function reachEnd(side: Float64Array, inner: Vec3, restHeight: number, way: 1 | -1): ReachEnd {
  const pose = new Float64Array(POSE_ROW);
  let last = 0;
  let lastHeight = restHeight;
  let status: PoseStatus = PoseStatus.Ok;
  const rates = new Float64Array(RATE_ROW);
  /** Status at an angle: the wheel must rise with the arm (its slope decides, so that no angle past the top passes). */
  const stateAt = (angle: number): PoseStatus => {
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const s = poseRowTo(pose, 0, side, cos, sin, inner[0], inner[1], inner[2]);
    if (s !== PoseStatus.Ok) return s;
    wheelRatesTo(rates, 0, side, pose, 0, cos, sin);
    return rates[RATE.armSlide + 2]! > 0 ? PoseStatus.Ok : PoseStatus.LowerArmOutOfReach;
  };
  const accept = (angle: number) => {
    last = angle;
    lastHeight = pose[POSE.wheelCenter + 2]!;
  };
  let next = way * REACH_STEP;
  for (; Math.abs(next) <= REACH_LIMIT; next += way * REACH_STEP) {
    status = stateAt(next);
    if (status !== PoseStatus.Ok) break;
    accept(next);
  }
  if (status === PoseStatus.Ok)
    return { armAngle: last, travel: lastHeight - restHeight, status: PoseStatus.LowerArmOutOfReach };
  let beyond = next;
  while (Math.abs(beyond - last) > 1e-13) {
    const middle = 0.5 * (last + beyond);
    const s = stateAt(middle);
    if (s === PoseStatus.Ok) accept(middle);
    else {
      beyond = middle;
      status = s;
    }
  }
  return { armAngle: last, travel: lastHeight - restHeight, status };
}
