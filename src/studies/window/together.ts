import { evenly } from "../numeric/evenly.ts";
import type { FieldSearch } from "./fieldSearch.ts";
import type { Closer } from "./windowTypes.ts";

/** A stretch of the field at which the truck goes together, or a limit by which it does not. */
export interface TogetherStretch {
  readonly low: number;
  readonly high: number;
  readonly by: Closer | null;
}

/** Values looked at over the whole range: between two that go together the truck is taken to go together. */
const SAMPLES = 17;

/** Where in a range the truck goes together, in rising order; ends to `tolerance`, on the side that goes together. */
export function togetherOver(
  search: FieldSearch,
  from: number,
  to: number,
  tolerance: number,
): readonly TogetherStretch[] {
  const stretches: TogetherStretch[] = [];
  const add = (low: number, high: number, by: Closer | null) => {
    const last = stretches.at(-1);
    if (last !== undefined && (last.by === null) === (by === null))
      stretches[stretches.length - 1] = { ...last, high };
    else if (high > low) stretches.push({ low, high, by });
  };
  const values = evenly(from, to, SAMPLES);
  let before = search.notTogetherAt(from);
  for (let i = 1; i < SAMPLES; i++) {
    let [low, high] = [values[i - 1]!, values[i]!];
    const start = low;
    const end = high;
    const after = search.notTogetherAt(high);
    if ((before === null) === (after === null)) {
      add(start, end, before);
    } else {
      let atLow = before;
      let atHigh = after;
      while (high - low > tolerance) {
        const middle = 0.5 * (low + high);
        const found = search.notTogetherAt(middle);
        if ((found === null) === (before === null)) [low, atLow] = [middle, found];
        else [high, atHigh] = [middle, found];
      }
      const border = before === null ? low : high;
      add(start, border, atLow);
      add(border, end, atHigh);
    }
    before = after;
  }
  return stretches;
}
