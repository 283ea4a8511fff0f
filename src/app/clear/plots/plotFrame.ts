import { type PlotAxis, type PlotSpec, plotOver, type Series } from "../../parts/plotNumbers.ts";
import { type LinearScale, linearScale } from "../../parts/scaleTicks.ts";
import { plotRange, type Span } from "./plotRange.ts";

/** A drawing's size and what of it is beside the scales, px. */
export interface PlotBox {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The box of a plot laid out at a size, px. */
export function plotBox(width: number, height: number): PlotBox {
  const isLow = height < 180;
  return { width, height, left: 54, right: 14, top: isLow ? 18 : 20, bottom: isLow ? 32 : 36 };
}

/** px that a letter of a scale's name takes at the most, over a whole name. */
const LETTER = 6;

/** What stands at a scale: its name, in short where that is too long for `room`, px; and the unit. */
export function scaleName(
  { label, brief = label }: Pick<PlotAxis, "label" | "brief">,
  unit: string,
  room: number,
) {
  const whole = `${label}, ${unit}`;
  return LETTER * whole.length <= room ? whole : `${brief}, ${unit}`;
}

/** What is looked at closer: a stretch of x, and of y where that was asked for too. */
export interface Zoom {
  readonly x: Span;
  readonly y: Span | null;
}

/** Both scales of a plot, and what they hold. */
export interface PlotFrame {
  readonly box: PlotBox;
  readonly x: LinearScale;
  readonly y: LinearScale;
  readonly across: Span;
  readonly up: Span;
}

/** The whole x scale of a plot. */
export function wholeSpan({ series }: PlotSpec): Span {
  const ends = series.flatMap(({ points }) => (points.length > 0 ? [points[0]!.x, points.at(-1)!.x] : []));
  return ends.length === 0 ? { low: 0, high: 1 } : { low: Math.min(...ends), high: Math.max(...ends) };
}

/** px below a level across, for its name. */
const LEVEL_NAME = 15;

/** Lays a plot out. Of steering left lock stands at the left, as on the map: + is a left turn. */
export function plotFrame(
  spec: PlotSpec,
  box: PlotBox,
  zoom: Zoom | null,
  band: Partial<Span> = {},
): PlotFrame {
  const across = zoom?.x ?? wholeSpan(spec);
  const { width, height, left, right, top, bottom } = box;
  const below = Math.min(0.3, LEVEL_NAME / Math.max(1, height - top - bottom));
  const up = zoom?.y ?? plotRange(spec, zoom?.x ?? null, band, below);
  const ends = isReversed(spec) ? ([across.high, across.low] as const) : ([across.low, across.high] as const);
  return {
    box,
    across,
    up,
    x: linearScale(ends, [left, width - right], true),
    y: linearScale([up.low, up.high], [height - bottom, top]),
  };
}

/** A curve as an SVG path, broken at its holes. Looked at closer it runs out of the picture, not along its edge. */
export function curvePath(points: Series["points"], { x, y }: Pick<PlotFrame, "x" | "y">): string {
  let path = "";
  let letter = "M";
  for (const point of points) {
    if (point.y === null) letter = "M";
    else {
      path += `${letter}${hundredths(x.free(point.x))},${hundredths(y(point.y))}`;
      letter = "L";
    }
  }
  return path;
}

function hundredths(pixels: number): number {
  return Math.round(100 * pixels) / 100;
}

/** Whether the scale's larger numbers stand at the left. */
export function isReversed(spec: PlotSpec): boolean {
  return plotOver(spec) === "steer";
}

/** The least share of the whole scale that can be looked at. */
const CLOSEST = 1 / 64;

/** A closer or wider look about a place: `factor` 2 shows half as much. null = all of it. */
export function zoomed(spec: PlotSpec, zoom: Zoom | null, about: number, factor: number): Zoom | null {
  const whole = wholeSpan(spec);
  const now = zoom?.x ?? whole;
  const span = Math.max((now.high - now.low) / factor, CLOSEST * (whole.high - whole.low));
  if (span >= (whole.high - whole.low) * (1 - 1e-9)) return null;
  const share =
    now.high > now.low
      ? (Math.min(now.high, Math.max(now.low, about)) - now.low) / (now.high - now.low)
      : 0.5;
  return { x: within(whole, about - share * span, span), y: null };
}

/** The same look moved along by a share of itself. */
export function moved(spec: PlotSpec, zoom: Zoom, share: number): Zoom {
  const span = zoom.x.high - zoom.x.low;
  return { ...zoom, x: within(wholeSpan(spec), zoom.x.low + share * span, span) };
}

function within(whole: Span, low: number, span: number): Span {
  const from = Math.min(whole.high - span, Math.max(whole.low, low));
  return { low: from, high: from + span };
}
