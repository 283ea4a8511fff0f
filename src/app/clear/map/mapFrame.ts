import type { Setup } from "../../../setup/types/types.ts";
import { linearScale } from "../../parts/scaleTicks.ts";

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

/** The map's drawing, in its own units; the page scales it. */
export const MAP_BOX = { width: 400, height: 272, left: 50, right: 12, top: 30, bottom: 22 } as const;

/** Foot of what the travel up the side is called: over its numbers, where no other axis is. */
export const TRAVEL_TITLE = { x: 10, y: 16 } as const;

export interface MapFrame {
  /** Steer to the right: left lock stands at the left, the way the wheels go. */
  readonly x: (steer: number) => number;
  /** Travel upward: bump, the truck low, at the top. */
  readonly y: (travel: number) => number;
  readonly steerAt: (x: number) => number;
  readonly travelAt: (y: number) => number;
}

export function mapFrameOf(droop: number, bump: number): MapFrame {
  const { width, height, left, right, top, bottom } = MAP_BOX;
  const x = linearScale([1, -1], [left, width - right], true);
  const y = linearScale([droop, bump], [height - bottom, top], true);
  return { x, y, steerAt: x.invert, travelAt: y.invert };
}
