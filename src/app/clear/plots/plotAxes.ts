import { solvePose } from "../../../suspension/solvePose.ts";
import type { PlotAxis } from "../../parts/plotNumbers.ts";
import { memoLast } from "../../state/memoLast.ts";
import type { Truck } from "../../state/truck.ts";

/** How steering is told along a plot: by the left wheel's angle, or as a share of full lock. */
export type SteerScale = "angle" | "lock";

export const TRAVEL_AXIS: PlotAxis = {
  label: "wheel travel from as measured, + bump",
  brief: "travel from as measured",
  measure: "length",
  over: "travel",
};
const LOCK_AXIS: PlotAxis = { label: "steering", measure: "lock", over: "steer" };

/** Steers between which the wheel's angle is taken straight: it bends by less than a thousandth of a degree. */
const STEPS = 64;

/** The scale of a plot over steering at a height, mm. A height out of reach is told as a share of lock. */
export function steerAxis(truck: Truck, travel: number, scale: SteerScale): PlotAxis {
  if (scale === "lock") return LOCK_AXIS;
  const angles = wheelAngles(truck, travel);
  if (angles === null) return LOCK_AXIS;
  const { steers, wheel } = angles;
  return {
    label: "steering, left wheel's angle",
    brief: "left wheel's angle",
    measure: "turn",
    over: "steer",
    fromInput: (steer) => between(steers, wheel, steer),
    toInput: (angle) => between(wheel, steers, angle),
  };
}

/** The left wheel's angle, rad, from full right to full left lock, as far as it is reached and turns the same way. */
const wheelAngles = memoLast((truck: Truck, travel: number) => {
  const steers: number[] = [];
  const wheel: number[] = [];
  for (let i = 0; i <= STEPS; i++) {
    const steer = (2 * i) / STEPS - 1;
    const pose = solvePose(truck.model.frontEnd, travel, steer);
    if (!pose.ok || pose.left.steerAngle <= (wheel.at(-1) ?? Number.NEGATIVE_INFINITY)) continue;
    steers.push(steer);
    wheel.push(pose.left.steerAngle);
  }
  return steers.length < 2 ? null : { steers, wheel };
});

/** Straight between pairs, and on past their ends. Both rise. */
function between(xs: readonly number[], ys: readonly number[], x: number): number {
  let i = xs.findIndex((one) => one >= x);
  if (i < 0) i = xs.length - 1;
  i = Math.max(1, i);
  const [x0, x1, y0, y1] = [xs[i - 1]!, xs[i]!, ys[i - 1]!, ys[i]!];
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
