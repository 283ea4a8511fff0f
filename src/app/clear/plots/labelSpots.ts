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

export interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What names keep off: other names, and lines straight across the plot by their heights, px. */
export interface Drawn {
  readonly taken: readonly Room[];
  readonly levels: readonly number[];
}

const NOTHING: Drawn = { taken: [], levels: [] };

/** A name's box by where its base line begins. */
export function nameBox(name: string, left: number, base: number): Room {
  return { left, right: left + LETTER * name.length, top: base - ABOVE, bottom: base + BELOW };
}

/** Pixels of the drawing: an average letter's width, how far letters reach above and below their base line. */
const LETTER = 5.2;
const ABOVE = 9;
const BELOW = 3;
/** Between a name and its own curve. */
const OFF = 3;

/** Lines of names between a name and its curve, where curves run too close together for all to stand next to theirs. */
const LINES_OFF = [0, 1, 2] as const;

/**
 * Curves past which a name is left out that has no room of its own: a cloud of names tells less than the list below the plot, which
 * has them all with line, color and mark.
 */
const MANY = 5;
/** The same in a plot narrower than `SMALL`, px, as in the dock and on a phone: there names of five lie on curves of others. */
const MANY_IN_SMALL = 4;
const SMALL = 260;

/** px that any other curve is farther from such a name: in a bundle of curves the one shown alone is named. */
const ALONE = 3;

/** Where along the plot a name may stand, the right end first, as the share of the way from the left. */
const SHARES = [1, 0.86, 0.72, 0.58, 0.44, 0.3, 0.16, 0] as const;

/**
 * Where the names of curves go: above or below their own curve, as near as there is room, where the fewest other curves and no other name are
 * under them, nearer to their own curve than to any other, as far to the right as that allows. A plot with one curve needs no name: its title says it. Of many
 * curves only those are named whose name stands right beside its own curve, with no other under it.
 * @param x, @param y scales, to pixels; @param room of the plot, pixels; @param drawn what else is drawn
 */
export function labelSpots(
  series: readonly Series[],
  x: ((value: number) => number) & { invert(pixels: number): number },
  y: (value: number) => number,
  room: Room,
  { taken, levels }: Drawn = NOTHING,
): LabelSpot[] {
  if (series.length < 2) return [];
  const isMany = series.length > (room.right - room.left < SMALL ? MANY_IN_SMALL : MANY);
  const heightsUnder = (one: Series, box: Room): number[] =>
    [0, 0.25, 0.5, 0.75, 1].flatMap((share) => {
      const value = valueAt(one, x.invert(box.left + share * (box.right - box.left)));
      return value === null ? [] : [y(value)];
    });
  const placed: Room[] = [...taken];
  return series.flatMap((one, place) => {
    const width = LETTER * one.name.length;
    let best: Best | null = null;
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
        const crossed = [...ofOthers, ...levels.map((level) => [level])].filter((heights) =>
          crosses(heights, box),
        ).length;
        const isOut = box.top < room.top || box.bottom > room.bottom;
        const onNames = placed.filter((other) => overlap(other, box)).length;
        const offOwn = distance(own, box);
        const isStray = ofOthers.some((heights) => distance(heights, box) < offOwn);
        const isAlone = one.isMain || ofOthers.every((heights) => distance(heights, box) > offOwn + ALONE);
        const cost =
          (isMany && !isAlone ? 6 : 0) +
          100 * onNames +
          50 * Number(isOut) +
          12 * Number(isStray) +
          4 * crossed +
          5 * lines +
          0.5 * i;
        if (best !== null && cost >= best.cost) continue;
        const isPlain = onNames + crossed + lines === 0 && !isOut && !isStray && isAlone;
        const spot = { name: one.name, of: one.of ?? place, x: left + 0.5 * width, y: base };
        best = { cost, isPlain, box, spot };
      }
    }
    if (best === null || (isMany && !best.isPlain)) return [];
    placed.push(best.box);
    return [best.spot];
  });
}

interface Best {
  readonly cost: number;
  /** Nobody can take it for another curve's. */
  readonly isPlain: boolean;
  readonly spot: LabelSpot;
  readonly box: Room;
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
