import { type PlotSpec, plotOver, type Series } from "../../parts/plotNumbers.ts";
import { valueAt } from "./valueAt.ts";

/** Half of the stretch over which a slope is taken: mm of travel; rad of roll. */
const HALF = { travel: 0.1, roll: 0.0005 } as const;

/** A curve's value at x: exactly where it can be asked, else straight between its points. */
export function readAt(series: Series, x: number): number | null {
  const { points, read } = series;
  const [first, last] = [points[0]?.x ?? Number.NaN, points.at(-1)?.x ?? Number.NaN];
  const reach = 1e-6 * Math.abs(last - first);
  if (!(x >= Math.min(first, last) - reach && x <= Math.max(first, last) + reach)) return null;
  return read ? read(x) : valueAt(series, x);
}

/** The slope of a curve at x, in its own units per mm of travel or rad of roll; null over steering, in holes and at ends of reach. */
export function slopeAt(spec: PlotSpec, series: Series, x: number): number | null {
  const over = plotOver(spec);
  if (over === "steer") return null;
  // Points are straight between: a curve that can only be read there is asked over the whole stretch about x.
  const step = series.read ? HALF[over] : stretchOf(series);
  const read = series.read ?? ((at: number) => valueAt(series, at));
  const [before, at, after] = [read(x - step), read(x), read(x + step)];
  if (before !== null && after !== null) return (after - before) / (2 * step);
  if (at === null) return null;
  if (after !== null) return (after - at) / step;
  return before === null ? null : (at - before) / step;
}

function stretchOf({ points }: Series): number {
  const [first, second] = points;
  return first && second ? Math.abs(second.x - first.x) : 1;
}
