import type { Setup } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { amountText } from "./amountText.ts";
import { isStraight, wayOf } from "./poseWords.ts";

/** mm. A height this near a named one is that height: it was picked. */
const SAME_HEIGHT = 0.01;

/** The stance whose height this is; null when it has no name. */
export function stanceAt(travel: number, setup: Setup): string | null {
  return setup.stances.find((stance) => Math.abs(stance.travel - travel) < SAME_HEIGHT)?.name ?? null;
}

/** A height as its control reads it: how far up or down from as measured. */
export function travelText(travel: number, format: LengthFormat): string {
  if (Math.abs(travel) < SAME_HEIGHT) return `0 ${format.units}`;
  return `${amountText(travel, format)} ${travel > 0 ? "bump" : "droop"}`;
}

/** A height as a sentence says it: its stance's name if it has one. */
export function heightText(travel: number, setup: Setup, format: LengthFormat = setup): string {
  const stance = stanceAt(travel, setup);
  const isMeasured = Math.abs(travel) < SAME_HEIGHT;
  if (stance === null) return isMeasured ? "as measured" : travelText(travel, format);
  return isMeasured ? stance : `${stance} (${travelText(travel, format)})`;
}

/** How much of full lock, as the control reads it. */
export function lockText(steer: number): string {
  if (isStraight(steer)) return "straight ahead";
  if (isStraight(1 - Math.abs(steer))) return `full ${wayOf(steer)} lock`;
  return `${Math.max(1, Math.round(Math.abs(steer) * 100))}% ${wayOf(steer)} lock`;
}
