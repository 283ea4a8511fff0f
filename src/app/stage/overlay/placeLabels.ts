import type { ScreenPoint } from "./gapMark.ts";

/** What labels must keep clear of, pixels. */
export interface LabelRoom {
  readonly width: number;
  readonly height: number;
  /** Labels that stand there already: their middles and widths. */
  readonly taken?: readonly (ScreenPoint & { readonly width: number })[];
  /** Marks that a hand takes hold of. */
  readonly handles?: readonly ScreenPoint[];
  /** The picture is seen from elsewhere, or in another size, than when labels were placed last: they find their room anew. */
  readonly isTurned?: boolean;
  /** Marks that a label keeps off while there is another place for it, those it is not led to among them. */
  readonly marks?: readonly ScreenPoint[];
  /** Share, 0 … 1, of a label of half a width that would lie on what is better seen: of free places one that covers little is taken. */
  readonly covers?: (at: ScreenPoint, half: number) => number;
}

/** Pixels: half a label's height, what it keeps off others, off the picture's edges, off a handle, off a cross's arms. */
export const HALF = 10;
const OFF = 3;
const EDGE = 4;
/** Pixels that a label newly placed keeps off the edges besides: it stays where it stands when it comes to say more. */
const SPARE = 44;
const OFF_HANDLE = 9;
const OFF_MARK = 13;

/** Ways a leader may go, from where it is wanted: degrees to either side; and how long it may be, pixels. */
const TURNS = [0, 25, -25, 50, -50, 80, -80, 115, -115, 150, -150, 180];
const LENGTHS = [65, 95, 130, 40, 170, 220, 280];
const LONGEST = 340;

/** Places down the list at which one that covers nothing is as good as the first that lies wholly on what is better seen. */
const COVERING = 120;

/** Places down the list that a leader goes to lie over one handle less. */
const OVER_HANDLE = 12;

/**
 * Where the middles of labels go: up and away from the picture's middle if there is room, else another way; inside the
 * picture, on no other label, no handle, and with no leader across another or across a label; on no mark, and led over no
 * handle, or few, and under no label that stood before, while there is such a place; on little that is better seen. In the order given: the first gets the place it wants.
 *
 * @param marks what they are led to; @param widths of the labels, pixels; @param before where each stood when the picture was
 * drawn last, kept while it still has room there and its leader is not overlong
 * @returns null where there is no room: the mark then goes without a label
 */
export function placeLabels(
  marks: readonly ScreenPoint[],
  widths: readonly number[],
  room: LabelRoom,
  before: readonly (ScreenPoint | null)[] = [],
): (ScreenPoint | null)[] {
  const placed: { readonly mark: ScreenPoint; readonly at: ScreenPoint; readonly half: number }[] = [];
  return marks.map((mark, i) => {
    const half = 0.5 * widths[i]!;
    const isFree = (at: ScreenPoint) =>
      (room.taken ?? []).every((other) => isApart(at, half, other, 0.5 * other.width)) &&
      (room.handles ?? []).every((handle) => !isOn(handle, at, half, OFF_HANDLE)) &&
      placed.every(
        (other) =>
          isApart(at, half, other.at, other.half) &&
          !doCross(mark, at, other.mark, other.at) &&
          !doesCover(at, half, other.mark, other.at) &&
          !doesCover(other.at, other.half, mark, at),
      );
    /** The least covering of the free places, the first of those alike. */
    const best = (isFit: (at: ScreenPoint) => boolean, costOf = (_: ScreenPoint) => 0) => {
      let [found, cost]: [ScreenPoint | null, number] = [null, Number.POSITIVE_INFINITY];
      for (const [k, wanted] of placesFor(mark, room).entries()) {
        if (k >= cost) break;
        const to = fits(wanted, SPARE);
        if (!to || !isFit(to)) continue;
        const costs = k + COVERING * (room.covers?.(to, half) ?? 0) + costOf(to);
        if (costs < cost) [found, cost] = [to, costs];
      }
      return found;
    };
    const kept = before[i];
    const isKept = kept && Math.hypot(kept.x - mark.x, kept.y - mark.y) <= LONGEST;
    const isOffMarks = (at: ScreenPoint) =>
      (room.marks ?? []).every((other) => !isOn(other, at, half, OFF_MARK));
    // A label or a handle on the mark itself is left out: every leader would begin there.
    const inWay = (room.taken ?? []).filter((other) => !isOn(mark, other, 0.5 * other.width, 0));
    const gripped = (room.handles ?? []).filter(
      (one) => Math.hypot(one.x - mark.x, one.y - mark.y) > OFF_MARK,
    );
    const handlesUnder = (at: ScreenPoint) =>
      gripped.filter((one) => offLeader(one, mark, at) <= OFF_HANDLE).length;
    const crossing = (at: ScreenPoint) => OVER_HANDLE * handlesUnder(at);
    const isNeat = (at: ScreenPoint) =>
      isOffMarks(at) &&
      inWay.every((other) => !doesCover(other, 0.5 * other.width, mark, at)) &&
      handlesUnder(at) === 0;
    const fits = (wanted: ScreenPoint, spare: number) => {
      const to = inside(wanted, half, room, spare);
      return isOn(mark, to, half, OFF_HANDLE) || !isFree(to) ? null : to;
    };
    const stays = isKept ? fits(kept, room.isTurned ? SPARE : 0) : null;
    const at =
      stays && isOffMarks(stays)
        ? stays
        : (best(isNeat) ?? best(isOffMarks, crossing) ?? stays ?? best(() => true, crossing));
    if (!at) return null;
    placed.push({ mark, at, half });
    return at;
  });
}

function placesFor(mark: ScreenPoint, { width }: LabelRoom): ScreenPoint[] {
  const outward = mark.x < 0.5 * width ? -1 : 1;
  return LENGTHS.flatMap((length) =>
    TURNS.map((turn) => {
      const way = ((45 + turn) * Math.PI) / 180;
      return { x: mark.x + outward * length * Math.cos(way), y: mark.y - length * Math.sin(way) };
    }),
  );
}

function inside({ x, y }: ScreenPoint, half: number, room: LabelRoom, spare: number): ScreenPoint {
  const { width, height } = room;
  const beside = EDGE + half + Math.max(0, Math.min(spare, 0.5 * width - half - EDGE));
  return {
    x: Math.min(width - beside, Math.max(beside, x)),
    y: Math.min(height - EDGE - HALF, Math.max(EDGE + HALF, y)),
  };
}

function isApart(a: ScreenPoint, halfA: number, b: ScreenPoint, halfB: number): boolean {
  return Math.abs(a.x - b.x) >= halfA + halfB + OFF || Math.abs(a.y - b.y) >= 2 * HALF + OFF;
}

function isOn(point: ScreenPoint, label: ScreenPoint, half: number, off: number): boolean {
  return Math.abs(point.x - label.x) < half + off && Math.abs(point.y - label.y) < HALF + off;
}

/** Whether a label lies on a line: one of its diagonals or the line's foot. @param tall half its height, pixels */
export function doesCover(
  label: ScreenPoint,
  half: number,
  from: ScreenPoint,
  to: ScreenPoint,
  tall = HALF,
): boolean {
  const [left, right, top, bottom] = [label.x - half, label.x + half, label.y - tall, label.y + tall];
  return (
    (Math.abs(from.x - label.x) < half && Math.abs(from.y - label.y) < tall) ||
    doCross(from, to, { x: left, y: top }, { x: right, y: bottom }) ||
    doCross(from, to, { x: left, y: bottom }, { x: right, y: top })
  );
}

/** Pixels from a point to a leader. */
function offLeader(point: ScreenPoint, from: ScreenPoint, to: ScreenPoint): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy || 1);
  const share = Math.max(0, Math.min(1, along));
  return Math.hypot(point.x - from.x - share * dx, point.y - from.y - share * dy);
}

/** Whether two lines cross. Lines that begin at one place do not. */
export function doCross(a: ScreenPoint, b: ScreenPoint, c: ScreenPoint, d: ScreenPoint): boolean {
  const turn = (p: ScreenPoint, q: ScreenPoint, r: ScreenPoint) =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}
