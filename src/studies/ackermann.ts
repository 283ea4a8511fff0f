import type { SolvedPose } from "../suspension/solvePose.ts";
import type { Model } from "./model.ts";

/**
 * How the outer wheel's angle differs from the one with which neither front tire scrubs, rad: + = the outer wheel
 * turns more than that. No-scrub relation of Ackermann steering, cot δ_outer = cot δ_inner + w / l, with w between
 * the steering axes where they meet the ground and l the wheelbase (Gillespie, Fundamentals of Vehicle Dynamics,
 * 1992, the chapter on steering; from memory).
 * @returns null without a wheelbase, and where no wheel turns.
 */
export function ackermannError(model: Model, pose: SolvedPose): number | null {
  const { wheelbase } = model.setup.truck;
  if (wheelbase === null) return null;
  const turn = 0.5 * (pose.left.steerAngle + pose.right.steerAngle);
  if (Math.abs(turn) < 1e-9) return null;
  const [inner, outer] = turn > 0 ? [pose.left, pose.right] : [pose.right, pose.left];
  const width = axisAtGround(pose.left) - axisAtGround(pose.right);
  const innerAngle = Math.abs(inner.steerAngle);
  const wanted = Math.atan2(1, 1 / Math.tan(innerAngle) + width / wheelbase);
  return Math.abs(outer.steerAngle) - wanted;
}

/** Y where the steering axis meets the ground under the contact patch, vehicle axes, mm. */
function axisAtGround({ lowerBallJoint: low, upperBallJoint: up, contactPatch }: SolvedPose["left"]): number {
  const share = (contactPatch[2] - low[2]) / (up[2] - low[2]);
  return low[1] + share * (up[1] - low[1]);
}
