import type { Series } from "../../parts/plotNumbers.ts";

/** A curve's value at x, straight between its points; null in its holes and beyond its ends. */
export function valueAt({ points }: Series, x: number): number | null {
  const after = points.findIndex((p) => p.x >= x);
  if (after < 0) return null;
  const b = points[after]!;
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
