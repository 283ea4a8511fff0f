import type { PlotSpec } from "../../parts/plotNumbers.ts";

/** Room above and below the curves, as a share of what they span. */
const MARGIN = 0.08;

/** A stretch of a scale. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** Of a wild curve the scale holds all but so much of its values at either end. */
const WILD_SHARE = 0.1;

/**
 * The span of a plot's y scale: all curves with some room, or what they do over a stretch of x. A flat curve gets a span that
 * shows it is flat; a band that is wanted is held as well, and of a whole plot its levels.
 * @param below the lowest level, room for its name, as a share of the whole scale
 */
export function plotRange(
  { series, y, levels = [] }: PlotSpec,
  over: Span | null = null,
  band: Partial<Span> = {},
  below = 0,
): Span {
  const values: number[] = [];
  for (const { points } of series) {
    for (const point of points) {
      if (point.y === null || (over !== null && (point.x < over.low || point.x > over.high))) continue;
      values.push(point.y);
    }
  }
  if (values.length === 0) return { low: -1, high: 1 };
  values.sort((a, b) => a - b);
  const cut = y.isWild ? Math.floor(WILD_SHARE * values.length) : 0;
  const held = over === null ? levels.map(({ at }) => at) : [];
  const ends = [values[cut]!, values[values.length - 1 - cut]!, band.low, band.high, ...held].filter(
    (end) => end !== undefined,
  );
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const spread = Math.max(high - low, LEAST_SPANS[y.measure]);
  const middle = 0.5 * (low + high);
  const whole = { low: middle - (0.5 + MARGIN) * spread, high: middle + (0.5 + MARGIN) * spread };
  const level = Math.min(...held);
  if (held.length === 0 || level < whole.low) return whole;
  return { ...whole, low: Math.min(whole.low, (level - below * whole.high) / (1 - below)) };
}

/** What is less than this is drawn as level: a tenth of a degree, a millimeter, a hundredth, 1 N/mm. */
const LEAST_SPANS = {
  angle: 0.1 * (Math.PI / 180),
  turn: 0.1 * (Math.PI / 180),
  length: 1,
  lock: 0.01,
  ratio: 0.01,
  rate: 1,
} as const;
