import type { Limit } from "../map/limit.ts";
import type { SteerLimits } from "../map/steerLimits.ts";

/** Steers nearer to each other than this, of full lock, are the same: mirrored sides differ by rounding alone. */
const SAME_STEER = 1e-4;

/**
 * What stops the steering first on the way from straight ahead to either lock; of two alike a touch, then the left
 * wheel's. Where nothing does, the end of the steering.
 */
export function firstStop(steering: SteerLimits): Limit {
  return waysOf(steering).reduce((first, next) => {
    const nearer = Math.abs(first.at) - Math.abs(next.at);
    if (Math.abs(nearer) > SAME_STEER) return nearer > 0 ? next : first;
    return first.stop !== "touch" && next.stop === "touch" ? next : first;
  });
}

/** The touch met first, whatever ends the other ways; null where none is known. */
export function firstTouch(steering: SteerLimits): Limit | null {
  return waysOf(steering)
    .filter(({ stop }) => stop === "touch")
    .reduce<Limit | null>(
      (first, next) => (first === null || Math.abs(next.at) < Math.abs(first.at) ? next : first),
      null,
    );
}

function waysOf({ leftTurn, rightTurn }: SteerLimits): Limit[] {
  return [leftTurn.touch.left, rightTurn.touch.left, leftTurn.touch.right, rightTurn.touch.right];
}
