import type { LengthFormat } from "../../../units/formatLength.ts";
import { type PlotSpec, plotOver, readText } from "../../parts/plotNumbers.ts";

/** Of the steering input. Nearer to the middle nobody holds a wheel. */
const STRAIGHT = 1e-3;

export const STRAIGHT_AHEAD = "straight ahead";

/** The place along a plot; a wheel that stands straight ahead is told so, whatever toe it has there. */
export function placeText(spec: PlotSpec, at: number, format: LengthFormat): string {
  const input = spec.x.toInput?.(at) ?? at;
  if (plotOver(spec) === "steer" && Math.abs(input) < STRAIGHT) return STRAIGHT_AHEAD;
  return readText(at, spec.x.measure, format);
}
