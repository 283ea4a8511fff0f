import { requireFinite } from "../../geometry/requireFinite.ts";

/** The lowest place of a function with one valley between two ends, by golden sections, to a tolerance. */
export function lowestBetween(
  value: (x: number) => number,
  from: number,
  to: number,
  tolerance: number,
): number {
  requireFinite("lowestBetween", from, to, tolerance);
  const share = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [a, b] = [high - share * (high - low), low + share * (high - low)];
  let [atA, atB] = [value(a), value(b)];
  while (high - low > tolerance) {
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - share * (high - low);
      atA = value(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + share * (high - low);
      atB = value(b);
    }
  }
  return 0.5 * (low + high);
}
