import type { Limit } from "../map/limit.ts";
import type { SteerLimits } from "../map/steerLimits.ts";

/** Steers nearer to each other than this, of full lock, are the same: mirrored sides differ by rounding alone. */
const SAME_STEER = 1e-4;

/**
 * What stops the steering first on the way from straight ahead to either lock; of two alike a touch, then the left
 * wheel's. Where nothing does, the end of the steering.
 */
export function firstStop({ leftTurn, rightTurn }: SteerLimits): Limit {
  const all = [leftTurn.touch.left, rightTurn.touch.left, leftTurn.touch.right, rightTurn.touch.right];
  return all.reduce((first, next) => {
    const nearer = Math.abs(first.at) - Math.abs(next.at);
    if (Math.abs(nearer) > SAME_STEER) return nearer > 0 ? next : first;
    return first.stop !== "touch" && next.stop === "touch" ? next : first;
  });
}
