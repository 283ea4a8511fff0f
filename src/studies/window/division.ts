import type { Stretch } from "./fieldSearch.ts";
import type { Closer } from "./windowTypes.ts";

/** A stretch of the field with what one subject, a pair or the limits, does all over it. */
export interface Part {
  readonly low: number;
  readonly high: number;
  /** `open`: neither is proven, and it is no wider than the tolerance, or the budget was spent. */
  readonly state: "keeps" | "misses" | "open";
  readonly by: Closer | null;
}

/** Share of the tolerance below which it does not pay to cut a proven piece out of the middle of a stretch. */
const LEAST_SHARE = 0.125;

/** Of the slope seen between two values what is counted on nearer to the end: the gap may fall more slowly there. */
const SLOPE_SHARE = 0.9;

/** A value looked at: more than 0 by what it keeps, less by what it misses; mm or radians of the field. */
interface Look {
  readonly value: number;
  readonly margin: number;
}

/**
 * Divides a stretch until one subject is proven to keep its allowance all over each part, or not to at any value of it, or the part is
 * as narrow as the tolerance. Where looks on both sides tell about where the end lies, a look is made as far from it as just reaches
 * back to what is proven already: each then leaves a small share of the way to the end, whatever the slope.
 * @param prove asked about stretches; its answer is about their middle
 * @param points inside the stretch, rising, where to begin
 */
export function divided(
  low: number,
  high: number,
  points: readonly number[],
  prove: (low: number, high: number) => Stretch,
  tolerance: number,
  isSpent: () => boolean,
): readonly Part[] {
  const found: Part[] = [];
  const looks: Look[] = [];
  const starts = [low, ...points, high];
  const waiting = starts.slice(1).map((end, i) => ({ low: starts[i]!, high: end, isAimed: false }));
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { low: a, high: b } = next;
    if (isSpent()) {
      found.push({ low: a, high: b, state: "open", by: null });
      continue;
    }
    const aimed = next.isAimed || b - a <= tolerance ? null : aimedAt(a, b, looks, tolerance);
    if (aimed !== null) {
      waiting.push(...aimed);
      continue;
    }
    const half = 0.5 * (b - a);
    const middle = a + half;
    const { keeps, misses, by } = prove(a, b);
    looks.push({ value: middle, margin: keeps > 0 ? keeps : -misses });
    const reach = Math.max(keeps, misses);
    const state = keeps > 0 ? "keeps" : "misses";
    if (reach >= half) found.push({ low: a, high: b, state, by });
    else if (b - a <= tolerance) found.push({ low: a, high: b, state: "open", by: null });
    else {
      const cut = reach > LEAST_SHARE * tolerance ? reach : 0;
      if (cut > 0) found.push({ low: middle - cut, high: middle + cut, state, by });
      waiting.push(
        { low: a, high: middle - cut, isAimed: false },
        { low: middle + cut, high: b, isAimed: false },
      );
    }
  }
  return found.sort((one, other) => one.low - other.low);
}

/** The stretch in up to three, the outer ones such that a look at their middle should settle them; null = no end is expected inside. */
function aimedAt(low: number, high: number, looks: readonly Look[], tolerance: number) {
  const [left, right] = [nearest(looks, low, -1), nearest(looks, high, 1)];
  if (left === null || right === null || left.margin > 0 === right.margin > 0) return null;
  const slope = Math.abs(left.margin - right.margin) / (right.value - left.value);
  const end = left.value + Math.abs(left.margin) / slope;
  if (!(slope > 0 && end > low && end < high)) return null;
  const share = (2 * SLOPE_SHARE * slope) / (1 + SLOPE_SHARE * slope);
  const a = low + share * (end - low);
  const b = high - share * (high - end);
  const least = 0.5 * tolerance;
  const parts = [];
  if (a - low > least) parts.push({ low, high: a, isAimed: true });
  if (high - b > least) parts.push({ low: b, high, isAimed: true });
  if (parts.length === 0) return null;
  const inner = { low: a - low > least ? a : low, high: high - b > least ? b : high, isAimed: false };
  // What is looked at first tells more about the rest.
  return inner.high > inner.low ? [inner, ...parts] : parts;
}

/** The look nearest to an end of a stretch, outside of it or at it. */
function nearest(looks: readonly Look[], end: number, way: 1 | -1): Look | null {
  let best: Look | null = null;
  for (const look of looks)
    if (way * (look.value - end) >= 0 && (best === null || way * (look.value - best.value) < 0)) best = look;
  return best;
}
