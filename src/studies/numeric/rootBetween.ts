import { requireFinite } from "../../geometry/requireFinite.ts";

/** Halvings that bring any length of a truck down to rounding. */
const MOST_HALVINGS = 60;

/**
 * Where a function crosses zero between two places, by bisection: it has opposite signs (or a zero) at `a` and `b`, and
 * the answer is within |b − a| ÷ 2^60 of a crossing. @returns NaN where the function has no value on the way.
 * @throws RangeError for places that are not finite
 */
export function rootBetween(f: (x: number) => number, a: number, b: number): number {
  requireFinite("rootBetween", a, b);
  const atA = f(a);
  if (atA === 0) return a;
  let [same, other] = [a, b];
  for (let i = 0; i < MOST_HALVINGS; i++) {
    const middle = 0.5 * (same + other);
    if (middle === same || middle === other) break;
    const value = f(middle);
    if (Number.isNaN(value)) return Number.NaN;
    if (value > 0 === atA > 0 && value !== 0) same = middle;
    else other = middle;
  }
  return other;
}
