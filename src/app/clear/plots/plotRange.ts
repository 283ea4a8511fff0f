import type { PlotSpec } from "../../parts/plotNumbers.ts";

/** Room above and below the curves, as a share of what they span. */
const MARGIN = 0.08;

/** The span of a plot's y scale: all curves with some room. A flat curve gets a span that shows it is flat. */
export function plotRange({ series, y }: PlotSpec): { readonly low: number; readonly high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { points } of series) {
    for (const point of points) {
      if (point.y === null) continue;
      low = Math.min(low, point.y);
      high = Math.max(high, point.y);
    }
  }
  if (!(low <= high)) return { low: -1, high: 1 };
  // A tenth of a degree or a millimeter: less than that is drawn as level.
  const least = y.measure === "angle" ? 0.1 * (Math.PI / 180) : 1;
  const spread = Math.max(high - low, least);
  const middle = 0.5 * (low + high);
  return { low: middle - (0.5 + MARGIN) * spread, high: middle + (0.5 + MARGIN) * spread };
}
