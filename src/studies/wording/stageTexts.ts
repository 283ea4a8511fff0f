import type { LengthFormat } from "../../units/formatLength.ts";
import { farText } from "./geometryTexts.ts";
import { angleText } from "./lengths.ts";

/** Under a picture in which the side of a fender is drawn over its lip. */
export const FENDER_SIDE_LEGEND = "Fender side: drawn only, not measured";

/** At a knuckle that is drawn dashed. */
export const ASSUMED_KNUCKLE = "knuckle: assumed";

/** Under the picture, how it is turned. */
export const DRAG_HINT = "drag to turn, scroll to zoom";

/** Under the picture while an example that is seen for the first time moves by itself. */
export const SHOWN_ONCE = "Shown once: from driving to where it is worst";

/** Under the picture while the truck stands where its answer is met. @param rubs it touches there @param isSoFar the check was cut short */
export function worstHereText(rubs: boolean, isSoFar: boolean): string {
  const so = isSoFar ? " so far" : "";
  return rubs ? `This is where it is worst${so}` : `This is where it comes nearest${so}`;
}

/** While the picture is not there yet. */
export const STAGE_LOADING = "Drawing the truck…";

/** Of a gap at a pose that is not counted, since it passes a limit: behind its amount. */
export const PAST_LIMITS = "past the limits";

/** The way the truck faces, at the arrow for it: as it is seen, or where the arrow is seen from its end. */
export const FRONT = { seen: "front", toward: "front, toward you", away: "front, away from you" } as const;

/** At the instant center where there is no room for where it is. */
export function instantCenterName(side: "left" | "right"): string {
  return `instant center, ${side} wheel`;
}

/** @param y from the centerline, + left; @param height above the floor, mm */
export function instantCenterLabel(
  side: "left" | "right",
  y: number,
  height: number,
  format: LengthFormat,
): string {
  const way = y < 0 ? "right" : "left";
  return `${instantCenterName(side)}: ${farText(Math.abs(y), format)} ${way}, ${farText(height, format)} above the floor`;
}

/** @param height above the floor, mm; null = the lines of the two wheels do not cross */
export function rollCenterLabel(height: number | null, format: LengthFormat): string {
  return height === null ? "roll center: none" : `roll center: ${farText(height, format)} above the floor`;
}

/** @param inclination + = leans inboard at the top, radians */
export function steeringAxisLabel(inclination: number): string {
  return `steering axis ${angleText(inclination)}`;
}
