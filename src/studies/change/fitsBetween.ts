import type { Budget } from "../numeric/budget.ts";
import type { TruckToVary } from "../window/truckOverField.ts";
import { WINDOW_TOLERANCE } from "../window/windowField.ts";
import { rangeOf, windowOfField } from "../window/windowOf.ts";
import { type Candidate, SPACER } from "./changeField.ts";

/** Tolerances by which a value is taken inside a window's end. */
const INTO = 0.5;

/**
 * Whether what fits may lie between two steps of which neither does: out of one part the wheel is in another. Of less travel, lock or
 * tire more of it clears what less of it does.
 */
export function comesAndGoes({ field, ways }: Candidate): boolean {
  return ways.length > 1 || field.key === SPACER || field.key.startsWith("knuckle.");
}

/** Which values of a field are tried: the ways that can help, as far as is looked. mm or radians. */
export function triedRange({ field, ways }: Candidate): { readonly from: number; readonly to: number } {
  const whole = rangeOf(field, {});
  return {
    from: ways.includes(-1) ? whole.from : field.now,
    to: ways.includes(1) ? whole.to : field.now,
  };
}

/**
 * The ends of what fits by a field's window over the whole range that is looked at, the nearest to now first; mm or radians.
 * `isOpen`: there may be more; `step`: as of a window that was looked at value by value.
 */
export function fitsBetween(
  truck: TruckToVary,
  { field, ways }: Candidate,
  budget: Budget,
): { readonly values: readonly number[]; readonly isOpen: boolean; readonly step: number | null } {
  const { from, to } = triedRange({ field, ways });
  if (!(to > from)) return { values: [], isOpen: false, step: null };
  const window = windowOfField(truck, field, { from, to, budget, isOpened: false });
  const { fits, between, cutShort = false } = window;
  const away = (value: number) => Math.abs(value - field.now);
  const values = fits.map((fit) => {
    const [near, far] = away(fit.from) < away(fit.to) ? [fit.from, fit.to] : [fit.to, fit.from];
    const into = Math.min(INTO * WINDOW_TOLERANCE[field.kind], 0.5 * Math.abs(far - near));
    return near + Math.sign(far - near) * into;
  });
  const step = between.rank === "sampled" ? between.step : null;
  return { values: values.sort((a, b) => away(a) - away(b)), isOpen: cutShort, step };
}
