import { type PageLine, type PageText, textWidth } from "../../geometry/page.ts";
import type { Drawn } from "./pageParts.ts";

type Place = readonly [number, number];

/** A dimension of a view. Places in mm of the knuckle as it is seen. */
export type Dimension =
  /** Level (`u`) or upright (`v`), on the low or the high side of the view. */
  | {
      readonly kind: "linear";
      readonly along: "u" | "v";
      readonly from: Place;
      readonly to: Place;
      readonly side: "low" | "high";
      readonly text: string;
    }
  /** Between two directions about a center, drawn at a radius. rad */
  | {
      readonly kind: "angle";
      readonly center: Place;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
      readonly text: string;
    }
  /** Words up to the end of a line from a place. `toward` in mm of paper. */
  | { readonly kind: "leader"; readonly at: Place; readonly toward: Place; readonly text: string };

/** A dimension as it lies on the sheet, about the view's own zero, mm of paper. */
export interface LaidDimension {
  /** The line the number stands at. */
  readonly main: readonly number[];
  readonly extensions: readonly (readonly number[])[];
  readonly arrows: readonly (readonly number[])[];
  readonly text: PageText;
}

// mm of paper.
const SIZE = 3;
const FIRST_ROW = 9;
const ROW = 7;
/** An extension line begins this far off what it is of, and goes this far past its dimension. */
const OFF = 1.2;
const PAST = 1.5;
const ARROW = 2.5;
const ARROW_HALF = 0.45;
const ARC_PIECES = 24;

/**
 * Dimensions round a view: on each side shorter ones nearer to it, so that those that start at one place do not cross.
 * @param bounds u0, v0, u1, v1 of what is drawn, mm of the knuckle @param scale paper for knuckle
 */
export function laidDimensions(
  dimensions: readonly Dimension[],
  bounds: readonly [number, number, number, number],
  scale: number,
): LaidDimension[] {
  const rows = new Map<string, number>();
  const ordered = [...dimensions].sort((a, b) => spanOf(a) - spanOf(b));
  return ordered.map((dimension) => {
    if (dimension.kind === "angle") return laidAngle(dimension, scale);
    if (dimension.kind === "leader") return laidLeader(dimension, scale);
    const key = `${dimension.along} ${dimension.side}`;
    const row = rows.get(key) ?? 0;
    rows.set(key, row + 1);
    return laidLinear(dimension, bounds, scale, row);
  });
}

/** As lines and texts of a page. */
export function drawnDimensions(laid: readonly LaidDimension[]): Drawn {
  const lines = laid.flatMap(({ main, extensions, arrows }): PageLine[] => [
    ...[main, ...extensions].map((points) => ({ pen: "dimension" as const, points })),
    ...arrows.map((points) => ({ pen: "dimension" as const, points, closed: true, filled: true })),
  ]);
  return { lines, circles: [], texts: laid.map(({ text }) => text) };
}

function spanOf(dimension: Dimension): number {
  if (dimension.kind !== "linear") return 0;
  const axis = dimension.along === "u" ? 0 : 1;
  return Math.abs(dimension.to[axis] - dimension.from[axis]);
}

function laidLinear(
  { along, from, to, side, text }: Extract<Dimension, { kind: "linear" }>,
  bounds: readonly [number, number, number, number],
  scale: number,
  row: number,
): LaidDimension {
  const isLevel = along === "u";
  const [along0, along1] = [from, to].map((place) => place[isLevel ? 0 : 1] * scale) as [number, number];
  const sign = side === "high" ? 1 : -1;
  const edge = bounds[(isLevel ? 1 : 0) + (side === "high" ? 2 : 0)]! * scale;
  const line = edge + sign * (FIRST_ROW + row * ROW);
  const at = (a: number, off: number): Place => (isLevel ? [a, off] : [off, a]);
  const extension = (place: Place, a: number) => {
    const start = place[isLevel ? 1 : 0] * scale + sign * OFF;
    return [...at(a, start), ...at(a, line + sign * PAST)];
  };
  const way = Math.sign(along1 - along0) || 1;
  // Where there is no room between the arrows they point inward from outside.
  const isTight = Math.abs(along1 - along0) < 2.5 * ARROW;
  const arrowWay = isTight ? -way : way;
  const tail = isTight ? 2 * ARROW * way : 0;
  const main = [...at(along0 - tail, line), ...at(along1 + tail, line)];
  const arrows = [arrow(at(along0, line), at(arrowWay, 0)), arrow(at(along1, line), at(-arrowWay, 0))];
  const middle = (along0 + along1) / 2;
  const isWide = textWidth(text, SIZE) > Math.abs(along1 - along0) - 1;
  // A number wider than its line stands past the line's far end, where rows farther out have no line yet.
  const beside = along1 + tail + way * (1 + textWidth(text, SIZE) / 2);
  const place = isWide ? beside : middle;
  return {
    main,
    extensions: [extension(from, along0), extension(to, along1)],
    arrows,
    text: isLevel
      ? { at: [place, line + 0.9], size: SIZE, text, anchor: "middle" }
      : { at: [line - 0.9, place], size: SIZE, text, anchor: "middle", turn: Math.PI / 2 },
  };
}

function laidAngle(
  { center, radius, from, to, text }: Extract<Dimension, { kind: "angle" }>,
  scale: number,
): LaidDimension {
  const r = radius * scale;
  const at = (turn: number, reach = r): Place => [
    center[0] * scale + reach * Math.cos(turn),
    center[1] * scale + reach * Math.sin(turn),
  ];
  const main = Array.from({ length: ARC_PIECES + 1 }, (_, i) =>
    at(from + ((to - from) * i) / ARC_PIECES),
  ).flat();
  const way = Math.sign(to - from);
  const tangent = (turn: number, sign: number): Place => [
    -sign * way * Math.sin(turn),
    sign * way * Math.cos(turn),
  ];
  return {
    main,
    extensions: [[...at(from, OFF * 2), ...at(from, r + PAST)]],
    arrows: [arrow(at(from), tangent(from, 1)), arrow(at(to), tangent(to, -1))],
    text: { at: at((from + to) / 2, r + 2), size: SIZE, text },
  };
}

function laidLeader(
  { at, toward, text }: Extract<Dimension, { kind: "leader" }>,
  scale: number,
): LaidDimension {
  const [x, y] = [at[0] * scale, at[1] * scale];
  const [ex, ey] = [x + toward[0], y + toward[1]];
  const size = Math.hypot(...toward);
  const isUp = toward[1] > 0;
  return {
    main: [x, y, ex, ey],
    extensions: [],
    arrows: [arrow([x, y], [toward[0] / size, toward[1] / size])],
    text: { at: [ex, isUp ? ey + 0.8 : ey - SIZE], size: SIZE, text, anchor: "end" },
  };
}

/** A tip at a place, its back toward a direction. */
function arrow([x, y]: Place, [dx, dy]: Place): number[] {
  const [bx, by] = [x + ARROW * dx, y + ARROW * dy];
  return [x, y, bx - ARROW_HALF * dy, by + ARROW_HALF * dx, bx + ARROW_HALF * dy, by - ARROW_HALF * dx];
}
