import type { Setup } from "../../setup/types.ts";
import { amountText } from "./amountText.ts";
import { angleText } from "./angleText.ts";

/** mm. A height this near a named one is that height: it was picked, or found by the check at an end of the range. */
const SAME_HEIGHT = 0.01;
/** Share of full lock below which the wheels count as straight ahead. */
const STRAIGHT = 0.0005;

/** A height in words: its stance's name if it has one, and how far up or down from as measured. */
export function travelWords(travel: number, setup: Setup): string {
  const stance = stanceAt(travel, setup);
  if (Math.abs(travel) < SAME_HEIGHT) return stance ?? "as measured";
  const amount = `${amountText(travel, setup)} ${travel > 0 ? "bump" : "droop"}`;
  return stance ? `${stance} (${amount})` : amount;
}

/** The stance whose height this is; null when it has no name. */
export function stanceAt(travel: number, setup: Setup): string | null {
  return setup.stances.find((stance) => Math.abs(stance.travel - travel) < SAME_HEIGHT)?.name ?? null;
}

/** A steering input in words. @param steerAngle of the wheel meant, rad, + = left */
export function steerWords(steer: number, steerAngle: number): string {
  if (Math.abs(steer) < STRAIGHT) return "straight ahead";
  return `${angleText(Math.abs(steerAngle))} ${steer > 0 ? "left" : "right"}`;
}

/** How much of full lock, for the control's own readout. */
export function lockWords(steer: number): string {
  if (Math.abs(steer) < STRAIGHT) return "straight ahead";
  const way = steer > 0 ? "left" : "right";
  if (Math.abs(steer) > 1 - STRAIGHT) return `full ${way} lock`;
  return `${Math.max(1, Math.round(Math.abs(steer) * 100))}% ${way} lock`;
}
