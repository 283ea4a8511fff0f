import type { Budget } from "../numeric/budget.ts";
import type { Setting, TruckToVary } from "../window/truckOverField.ts";
import { WINDOW_TOLERANCE } from "../window/windowField.ts";
import { windowOfField } from "../window/windowOf.ts";
import type { Smaller } from "./changeTypes.ts";

/** Tolerances within which the end of a window is the change that was found. */
const SAME = 3;

/** Tolerances by which a change of a window's end goes on into it. */
const INTO = 0.5;

/**
 * What is known of the values between now and a change that clears: the window of the field over just these. Where it fits nearer
 * to now than the change found, and a check says so too, that is the change.
 */
export function provenSmallest(
  truck: TruckToVary,
  [field, to]: Setting,
  budget: Budget,
  clears: (setting: Setting) => boolean,
): { readonly setting: Setting; readonly smaller: Smaller } {
  const tolerance = WINDOW_TOLERANCE[field.kind];
  const searched = { setting: [field, to] as const, smaller: { rank: "searched" } as const };
  const [from, end] = [Math.min(field.now, to), Math.max(field.now, to)];
  if (!(end - from > tolerance)) return searched;
  const window = windowOfField(truck, field, { from, to: end, budget });
  if (window.cutShort) return searched;
  const ends = window.fits.flatMap((fit) => [fit.from, fit.to]);
  const away = (value: number) => Math.abs(value - field.now);
  const nearest = ends.length === 0 ? to : ends.reduce((best, one) => (away(one) < away(best) ? one : best));
  const smaller: Smaller =
    window.between.rank === "proven"
      ? { rank: "proven", within: SAME * tolerance }
      : { rank: "sampled", step: window.between.step };
  if (away(to) - away(nearest) <= SAME * tolerance) return { setting: [field, to], smaller };
  const inner = nearest + Math.sign(to - field.now) * INTO * tolerance;
  return clears([field, inner]) ? { setting: [field, inner], smaller } : searched;
}
