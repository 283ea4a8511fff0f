import type { ScreenPoint } from "./gapMark.ts";
import { type LabelRoom, placeLabels } from "./placeLabels.ts";

/** A label that is to stand on the picture. */
export interface WantedLabel {
  /** What it tells of; the same from frame to frame. */
  readonly key: string;
  /** What it tells, of whichever part: new of its own, it stands where the last such one stood. */
  readonly role?: string;
  readonly mark: ScreenPoint;
  /** Pixels. */
  readonly width: number;
}

/** Share of a picture's width that a label may take: a longer one lies on the truck wherever it stands. */
const WIDEST = 0.7;

/** What a label says in a picture: all of it, or in fewer words where that would take too much of the picture. */
export function fittingText(
  { text, shorter }: { readonly text: string; readonly shorter: readonly string[] },
  widthOf: (text: string) => number,
  room: number,
): string {
  return [text, ...shorter].find((one) => widthOf(one) <= WIDEST * room) ?? shorter.at(-1) ?? text;
}

interface Stood {
  readonly at: ScreenPoint;
  readonly mark: ScreenPoint;
}

/** Pixels that a picture seen from the same place may be off. */
const SAME = 0.01;

/**
 * Places labels frame after frame: seen from where it was seen before, a label stays where it stands and only its leader
 * follows what moves; turned or zoomed by a hand it goes with its mark; in another view it finds a place anew.
 * @returns their middles, null where there is no room; `eye` = where fixed points of the truck fall on the picture; `view` =
 * which view was asked for
 */
export function labelKeeper(): (
  wanted: readonly WantedLabel[],
  room: LabelRoom,
  eye: readonly ScreenPoint[],
  view?: string,
) => (ScreenPoint | null)[] {
  let stood = new Map<string, Stood>();
  let seen: readonly ScreenPoint[] = [];
  let viewed: string | undefined;
  return (wanted, room, eye, view) => {
    // Beside its mark another view has other things to cover.
    if (view !== viewed) stood = new Map();
    viewed = view;
    const isSameEye = eye.every((point, i) => {
      const before = seen[i];
      return before && Math.hypot(point.x - before.x, point.y - before.y) < SAME;
    });
    const before = wanted.map(({ key, role, mark }) => {
      const last = stood.get(key) ?? stood.get(role ?? "");
      if (!last || isSameEye) return last?.at ?? null;
      return { x: mark.x + last.at.x - last.mark.x, y: mark.y + last.at.y - last.mark.y };
    });
    const marks = wanted.map(({ mark }) => mark);
    const widths = wanted.map(({ width }) => width);
    const found = placeLabels(marks, widths, { ...room, isTurned: !isSameEye }, before);
    // One that is not told for a moment, while a truck is checked anew, comes back where it stood.
    stood = new Map([
      ...(isSameEye ? stood : []),
      ...wanted.flatMap(({ key, role, mark }, i): [string, Stood][] =>
        found[i] ? [role ?? key, key].map((one) => [one, { at: found[i]!, mark }]) : [],
      ),
    ]);
    seen = eye;
    return found;
  };
}
