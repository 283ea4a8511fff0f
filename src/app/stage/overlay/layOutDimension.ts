import { addScaled, normalize, type Vec3 } from "../../../geometry/vec.ts";
import type { AngleDimension, Dimension, LinearDimension } from "./dimensions.ts";
import type { ScreenPoint } from "./gapMark.ts";

/** How points of the truck come onto the picture. */
export interface Projection {
  readonly toScreen: (point: Vec3) => ScreenPoint;
  /** Pixels a mm that lies in the picture. */
  readonly zoom: number;
  /** Of the picture, pixels. Default wide enough for anything. */
  readonly width?: number;
}

/** A dimension on the picture, in pixels. */
export interface DimensionLayout {
  /** Lines, each of two or more points. */
  readonly lines: readonly (readonly ScreenPoint[])[];
  readonly arrows: readonly { readonly at: ScreenPoint; readonly way: ScreenPoint }[];
  /** The middle of the text. */
  readonly label: ScreenPoint;
}

/** Pixels: an arrowhead, the free bit before an extension line begins, how far it goes past, half a line of text. */
const ARROW = 9;
const FREE = 4;
const PAST = 5;
const HALF_LINE = 9;
const TAIL = 16;
/** Seen shorter than this share of what it is, a length says nothing and is left out. */
const LEAST_SEEN = 0.4;
/** Points on an arc. */
const ARC = 12;

/** Where a dimension's lines, arrowheads and text go; null where it is seen too much from its end. @param width of the text */
export function layOutDimension(
  dimension: Dimension,
  view: Projection,
  width: number,
): DimensionLayout | null {
  return dimension.kind === "linear"
    ? layOutLinear(dimension, view, width)
    : layOutAngle(dimension, view, width);
}

function layOutLinear(
  { from, to, asides, textAt = 0.5, textStands = "in" }: LinearDimension,
  { toScreen, zoom, width: room = Infinity }: Projection,
  width: number,
): DimensionLayout | null {
  const a = toScreen(from);
  const b = toScreen(to);
  const seen = apart(a, b);
  const real = zoom * Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  if (!(real > 0) || seen < LEAST_SEEN * real || seen < 0.5) return null;
  const way = { x: (b.x - a.x) / seen, y: (b.y - a.y) / seen };
  let off: ScreenPoint | null = asides.length === 0 ? { x: 0, y: 0 } : null;
  for (const aside of asides) {
    const end = toScreen(addScaled(from, aside, 1));
    const shift = { x: end.x - a.x, y: end.y - a.y };
    // Square to the dimension enough that extension lines do not run along it.
    const square = Math.abs(shift.x * way.y - shift.y * way.x);
    if (square < LEAST_SEEN * zoom * Math.hypot(...aside)) continue;
    off = shift;
    break;
  }
  if (off === null) return null;
  const p = plus(a, off, 1);
  const q = plus(b, off, 1);
  const lines: ScreenPoint[][] = [];
  const far = Math.hypot(off.x, off.y);
  if (far > FREE) {
    for (const start of [a, b]) {
      lines.push([plus(start, off, FREE / far), plus(start, off, (far + PAST) / far)]);
    }
  }
  const back = { x: -way.x, y: -way.y };
  const need = textReach(way, width);
  const isTight = seen < 2 * ARROW + 6;
  const isOff = textStands !== "in" && far > FREE;
  if (!isTight && (isOff || seen >= 2 * need + 2 * ARROW + 6)) {
    lines.push([p, q]);
    const arrows = [
      { at: p, way: back },
      { at: q, way },
    ];
    const middle = plus(p, way, textAt * seen);
    if (!isOff) return { lines, arrows, label: middle };
    const out = { x: off.x / far, y: off.y / far };
    if (textStands === "outside")
      return { lines, arrows, label: plus(middle, out, textReach(out, width) + FREE) };
    const below = plus(p, back, HALF_LINE + PAST);
    return { lines, arrows, label: { x: below.x + Math.sign(off.x) * 0.5 * width, y: below.y } };
  }
  const end = plus(q, way, isTight ? TAIL : 0);
  const beyond = plus(end, way, need + FREE);
  const before = plus(p, back, (isTight ? TAIL : 0) + need + FREE);
  const isInside = ({ x }: ScreenPoint) => x >= 0.5 * width && x <= room - 0.5 * width;
  if (isTight) lines.push([plus(p, back, TAIL), p], [q, end]);
  else lines.push([p, q]);
  return {
    lines,
    arrows: [
      { at: p, way: isTight ? way : back },
      { at: q, way: isTight ? back : way },
    ],
    label: isInside(before) && !isInside(beyond) ? before : beyond,
  };
}

function layOutAngle(
  { vertex, from, to, radius }: AngleDimension,
  { toScreen, zoom }: Projection,
  width: number,
): DimensionLayout | null {
  const tip = toScreen(vertex);
  const arc: ScreenPoint[] = [];
  for (let i = 0; i <= ARC; i++) {
    const s = i / ARC;
    const way = normalize([
      (1 - s) * from[0] + s * to[0],
      (1 - s) * from[1] + s * to[1],
      (1 - s) * from[2] + s * to[2],
    ]);
    arc.push(toScreen(addScaled(vertex, way, radius)));
  }
  const first = arc[0]!;
  const last = arc[ARC]!;
  const u = { x: first.x - tip.x, y: first.y - tip.y };
  const v = { x: last.x - tip.x, y: last.y - tip.y };
  const sine = Math.hypot(
    from[1] * to[2] - from[2] * to[1],
    from[2] * to[0] - from[0] * to[2],
    from[0] * to[1] - from[1] * to[0],
  );
  // The area between the two ways, against what it is seen square on.
  if (Math.abs(u.x * v.y - u.y * v.x) < LEAST_SEEN * sine * (zoom * radius) ** 2) return null;
  const wayIn = (a: ScreenPoint, b: ScreenPoint) => {
    const d = apart(a, b) || 1;
    return { x: (b.x - a.x) / d, y: (b.y - a.y) / d };
  };
  const middle = arc[ARC / 2]!;
  const out = wayIn(tip, middle);
  const beyond = (end: ScreenPoint) => plus(end, wayIn(tip, end), PAST);
  return {
    lines: [arc, [tip, beyond(first)], [tip, beyond(last)]],
    arrows: [
      { at: first, way: wayIn(arc[1]!, first) },
      { at: last, way: wayIn(arc[ARC - 1]!, last) },
    ],
    label: plus(middle, out, textReach(out, width) + FREE),
  };
}

/** From the middle of level text to its border along a way, pixels. */
export function textReach(way: ScreenPoint, width: number): number {
  return Math.min((0.5 * width) / Math.abs(way.x), HALF_LINE / Math.abs(way.y));
}

function plus(a: ScreenPoint, way: ScreenPoint, s: number): ScreenPoint {
  return { x: a.x + s * way.x, y: a.y + s * way.y };
}

function apart(a: ScreenPoint, b: ScreenPoint): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}
