import type { Setup } from "../../../setup/types/types.ts";

/** Share of the travel within which a press takes a named height, and of full lock within which it goes straight. */
const STANCE_PULL = 0.02;
const STRAIGHT_PULL = 0.04;

/** A pressed pose, pulled to a named height or straight ahead where near, else to whole steps. mm, −1 … +1. */
export function snapped(
  travel: number,
  steer: number,
  { stances, travel: { droop, bump } }: Setup,
  travelStep: number,
): readonly [travel: number, steer: number] {
  const pull = STANCE_PULL * (bump - droop);
  const near = stances.find((stance) => Math.abs(stance.travel - travel) < pull);
  const whole = Math.min(bump, Math.max(droop, Math.round(travel / travelStep) * travelStep));
  const toSteer = Math.abs(steer) < STRAIGHT_PULL ? 0 : Math.round(steer * 100) / 100;
  return [near ? near.travel : whole, toSteer];
}
