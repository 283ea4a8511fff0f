import type { SideModel } from "./frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { TRAVEL_TOLERANCE } from "./tolerances.ts";
import { RATE, RATE_ROW, wheelRatesTo } from "./wheelRates.ts";

// Leaf scratch: `armAngleFor` calls nothing that could call it again.
const pose = new Float64Array(POSE_ROW);
const rates = new Float64Array(RATE_ROW);

/** More steps than bisection alone would need from 170° down to rounding. */
const MOST_STEPS = 80;

/**
 * The lower arm angle (rad from the measured pose, + = up) at which the wheel center stands `travel` mm
 * higher than at rest, steering straight ahead. Newton on the closed-form pose with its exact derivative, kept inside a
 * shrinking bracket. At a border of reach the height runs out like a square root, and a step that leaves the bracket
 * there goes where such a root through both ends would have it; every other one, and a pose that does not close, is bisected.
 * @param guess where to start, e.g. the answer of the neighbor in a sweep.
 * @returns NaN when the travel is outside `side.reach` — check with `travelStatus` first.
 */
export function armAngleFor(side: SideModel, travel: number, guess = 0): number {
  // Before the reach is asked for, which is worked out only then.
  if (travel === 0) return 0;
  const { droop, bump } = side.reach;
  if (!(travel >= droop.travel && travel <= bump.travel)) return Number.NaN;
  // At the very ends the pose exists at the angle found for them; one rounding further it may not.
  if (travel === droop.travel) return droop.armAngle;
  if (travel === bump.travel) return bump.armAngle;
  const target = side.centerHeightAtRest + travel;
  const [ix, iy, iz] = side.innerAtRest;
  let low = droop.armAngle;
  let high = bump.armAngle;
  // mm. How far below and above the wheel stands at both ends.
  let below = travel - droop.travel;
  let above = bump.travel - travel;
  let angle = guess > low && guess < high ? guess : 0;
  let isBisected = true;
  for (let step = 0; step < MOST_STEPS; step++) {
    const cos = Math.cos(angle);
    const sin = Math.sin(angle);
    const status = poseRowTo(pose, 0, side.row, cos, sin, ix, iy, iz);
    let next = Number.NaN;
    if (status === PoseStatus.Ok) {
      const excess = pose[POSE.wheelCenter + 2]! - target;
      if (Math.abs(excess) <= TRAVEL_TOLERANCE) return angle;
      wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin);
      next = angle - excess / rates[RATE.armSlide + 2]!;
      if (next === angle) return angle;
      const end = excess > 0 ? low : high;
      const rest = excess > 0 ? below : above;
      if (excess > 0) {
        high = angle;
        above = excess;
      } else {
        low = angle;
        below = -excess;
      }
      if (!(next > low && next < high)) {
        isBisected = !isBisected;
        next = isBisected ? Number.NaN : end + (angle - end) * (rest / (rest + Math.abs(excess))) ** 2;
      }
    } else if (angle > 0) high = angle;
    else low = angle;
    angle = next > low && next < high ? next : 0.5 * (low + high);
    if (!(angle > low && angle < high)) return angle;
  }
  return angle;
}

/** `Ok`, or what keeps the wheel from that travel with the steering straight ahead. */
export function travelStatus(side: SideModel, travel: number): PoseStatus {
  if (travel > side.reach.bump.travel) return side.reach.bump.status;
  if (travel < side.reach.droop.travel) return side.reach.droop.status;
  return PoseStatus.Ok;
}
