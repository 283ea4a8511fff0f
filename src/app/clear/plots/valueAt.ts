import type { Series } from "../../parts/plotNumbers.ts";

/** A curve's value at x, straight between its points, which ascend; null in its holes and beyond its ends. */
export function valueAt({ points }: Series, x: number): number | null {
  let [after, end] = [0, points.length];
  while (after < end) {
    const middle = (after + end) >> 1;
    if (points[middle]!.x >= x) end = middle;
    else after = middle + 1;
  }
  const b = points[after];
  if (b === undefined) return null;
  const a = points[after - 1];
  if (b.x === x || a === undefined) return b.x === x ? b.y : null;
  if (a.y === null || b.y === null) return null;
  return a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
}

/** Number of the value nearest to `wanted`; values ascend, and there is at least one. */
export function nearestIndex(values: readonly number[], wanted: number): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) {
    if (Math.abs(values[i]! - wanted) < Math.abs(values[best]! - wanted)) best = i;
  }
  return best;
}
