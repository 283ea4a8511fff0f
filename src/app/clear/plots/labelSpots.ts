import type { Series } from "../../parts/plotNumbers.ts";
import { valueAt } from "./valueAt.ts";

/** Middle of a name's base line, pixels. */
export interface LabelSpot {
  readonly name: string;
  /** As `Series.of`, which gives it its curve's color. */
  readonly of: number;
  readonly x: number;
  readonly y: number;
}

interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Pixels of the drawing: an average letter's width, how far letters reach above and below their base line. */
const LETTER = 5.2;
const ABOVE = 9;
const BELOW = 3;
/** Between a name and its own curve. */
const OFF = 3;

/** Lines of names between a name and its curve, where curves run too close together for all to stand next to theirs. */
const LINES_OFF = [0, 1, 2] as const;

/** Where along the plot a name may stand, the right end first, as the share of the way from the left. */
const SHARES = [1, 0.86, 0.72, 0.58, 0.44, 0.3, 0.16, 0] as const;

/**
 * Where the names of curves go: above or below their own curve, as near as there is room, where the fewest other curves and no other name are
 * under them, nearer to their own curve than to any other, as far to the right as that allows. A plot with one curve needs no name: its title says it.
 * @param x, @param y scales, to pixels; @param room of the plot, pixels
 */
export function labelSpots(
  series: readonly Series[],
  x: ((value: number) => number) & { invert(pixels: number): number },
  y: (value: number) => number,
  room: Room,
): LabelSpot[] {
  if (series.length < 2) return [];
  const heightsUnder = (one: Series, box: Room): number[] =>
    [0, 0.25, 0.5, 0.75, 1].flatMap((share) => {
      const value = valueAt(one, x.invert(box.left + share * (box.right - box.left)));
      return value === null ? [] : [y(value)];
    });
  const placed: Room[] = [];
  return series.flatMap((one, place) => {
    const width = LETTER * one.name.length;
    let best: { readonly cost: number; readonly spot: LabelSpot; readonly box: Room } | null = null;
    for (const [i, share] of SHARES.entries()) {
      const left = room.left + 2 + share * (room.right - room.left - width - 4);
      const span = { left, right: left + width, top: 0, bottom: 0 };
      const own = heightsUnder(one, span);
      if (own.length === 0) continue;
      const ofOthers = series.flatMap((other) => (other === one ? [] : [heightsUnder(other, span)]));
      const spots = LINES_OFF.flatMap((lines) => [
        { lines, base: Math.min(...own) - OFF - BELOW - lines * (ABOVE + BELOW) },
        { lines, base: Math.max(...own) + OFF + ABOVE + lines * (ABOVE + BELOW) },
      ]);
      for (const { lines, base } of spots) {
        const box = { ...span, top: base - ABOVE, bottom: base + BELOW };
        const crossed = ofOthers.filter((heights) => crosses(heights, box)).length;
        const isOut = box.top < room.top || box.bottom > room.bottom;
        const onNames = placed.filter((other) => overlap(other, box)).length;
        const offOwn = distance(own, box);
        const isStray = ofOthers.some((heights) => distance(heights, box) < offOwn);
        const cost =
          100 * onNames + 50 * Number(isOut) + 12 * Number(isStray) + 4 * crossed + 5 * lines + 0.5 * i;
        if (best === null || cost < best.cost)
          best = { cost, box, spot: { name: one.name, of: one.of ?? place, x: left + 0.5 * width, y: base } };
      }
    }
    if (best === null) return [];
    placed.push(best.box);
    return [best.spot];
  });
}

/** px from the middle of a box to the nearest of a curve's heights over it; none = as far as can be. */
function distance(heights: readonly number[], { top, bottom }: Room): number {
  const middle = 0.5 * (top + bottom);
  return Math.min(...heights.map((height) => Math.abs(height - middle)), Number.POSITIVE_INFINITY);
}

/** Whether a curve goes through a box, by its heights over the box's width. */
function crosses(heights: readonly number[], { top, bottom }: Room): boolean {
  return heights.length > 0 && Math.min(...heights) < bottom && Math.max(...heights) > top;
}

function overlap(a: Room, b: Room): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
