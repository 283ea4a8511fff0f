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
const SHARES = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0] as const;

/** Places over a name, as shares of its width, at which curves are looked at. */
const SAMPLES = [0, 0.2, 0.4, 0.6, 0.8, 1] as const;

/** px that another curve may be nearer to a name than its own: a name farther off would be taken for that one's. */
const STRAY = 7;

/** px about a letter that are wiped clean, and a little. */
const HALO = 2;

/**
 * Where the names of curves go: above or below their own curve, as near as there is room, nearer to it than to any other, off level
 * lines, as far to the right as that allows. A name that had to lie on another curve or beyond it, on another name or off the plot is left out:
 * the list below the plot has them all. A plot with one curve needs no name: its title says it. Of many curves only those are named
 * whose name stands right beside its own curve. A curve out of the plot's sight, or where it is, has no name.
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
  const placed: Room[] = [...taken];
  return series.flatMap((one, place) => {
    const width = LETTER * one.name.length;
    let best: Best | null = null;
    for (const [i, share] of SHARES.entries()) {
      const left = room.left + 2 + share * (room.right - room.left - width - 4);
      const span = { left, right: left + width, top: room.top, bottom: room.bottom };
      const own = heightsOver(one, span, x, y).filter((at) => at >= room.top && at <= room.bottom);
      if (own.length === 0) continue;
      const ofOthers = series.flatMap((other) => (other === one ? [] : [heightsOver(other, span, x, y)]));
      const spots = LINES_OFF.flatMap((lines) => [
        { lines, base: Math.min(...own) - OFF - BELOW - lines * (ABOVE + BELOW) },
        { lines, base: Math.max(...own) + OFF + ABOVE + lines * (ABOVE + BELOW) },
      ]);
      for (const { lines, base } of spots) {
        const box = { ...span, top: base - ABOVE, bottom: base + BELOW };
        const isOut = box.top < room.top || box.bottom > room.bottom;
        if (isOut || placed.some((other) => overlap(other, box))) continue;
        if (ofOthers.some((heights) => crosses(heights, box))) continue;
        const onLevels = levels.filter((level) => crosses([level], box)).length;
        const offOwn = distance(own, box);
        const offOthers = Math.min(...ofOthers.map((heights) => distance(heights, box)));
        if (offOthers < offOwn - STRAY) continue;
        const isStray = offOthers < offOwn;
        const isAlone = one.isMain || offOthers > offOwn + ALONE;
        if (isMany && (onLevels + lines > 0 || isStray || !isAlone)) continue;
        const cost = 12 * Number(isStray) + 14 * onLevels + 5 * lines + 0.35 * i;
        if (best !== null && cost >= best.cost) continue;
        best = { cost, box, spot: { name: one.name, of: one.of ?? place, x: left + 0.5 * width, y: base } };
      }
    }
    if (best === null) return [];
    placed.push(best.box);
    return [best.spot];
  });
}

/** A curve's heights over a box's width, px. */
export function heightsOver(
  one: Series,
  { left, right }: Room,
  x: { invert(pixels: number): number },
  y: (value: number) => number,
): number[] {
  return SAMPLES.flatMap((share) => {
    const value = valueAt(one, x.invert(left + share * (right - left)));
    return value === null ? [] : [y(value)];
  });
}

/** Whether a curve goes through a box or so near that the name's halo eats of it, by its heights over the box's width. */
export function crosses(heights: readonly number[], { top, bottom }: Room): boolean {
  return heights.length > 0 && Math.min(...heights) < bottom + HALO && Math.max(...heights) > top - HALO;
}

interface Best {
  readonly cost: number;
  readonly spot: LabelSpot;
  readonly box: Room;
}

/** px from the middle of a box to the nearest of a curve's heights over it; none = as far as can be. */
function distance(heights: readonly number[], { top, bottom }: Room): number {
  const middle = 0.5 * (top + bottom);
  return Math.min(...heights.map((height) => Math.abs(height - middle)), Number.POSITIVE_INFINITY);
}

function overlap(a: Room, b: Room): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
