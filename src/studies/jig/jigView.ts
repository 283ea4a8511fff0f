import { arrowLine, type Place, type SketchShape, words } from "../../geometry/sketch.ts";

/** What is written on the sketch of a jig: numbers as the sheet shows them. */
export interface JigSketchWords {
  readonly fromFront: string;
  readonly fromAbove: string;
  readonly forward: string;
  /** What heights are read from. */
  readonly datum: string;
  readonly straightedge: string;
  readonly onFace: string;
  /** What each tape is called. */
  readonly tape: { readonly front: string; readonly behind: string };
  readonly angleFinder: string;
  readonly tieRodEnd: string;
  /** How far the tie rod end is inboard or outboard. @param mm + = outboard */
  readonly armOut: (mm: number) => string;
  readonly mark: string;
  /** What a straightedge clamped too high reads, short. */
  readonly offHeight: string;
  readonly length: (mm: number) => string;
  readonly angle: (rad: number) => string;
}

/** px of one view. */
export const VIEW = { width: 450, height: 440 } as const;

/** A view of the jig: mm across (+ outboard) and along its height (+ toward the top of the view) to px. */
export type Placed = (across: number, up: number) => Place;

/** Extents in mm that a view has to show. */
export interface Extents {
  readonly inboard: number;
  readonly outboard: number;
  readonly low: number;
  readonly high: number;
}

/** px kept free about what is drawn, for words and dimension lines. */
export interface Room {
  readonly inboard: number;
  readonly outboard: number;
  readonly top: number;
  readonly bottom: number;
}

/** Fits extents into a view. @param hand +1 = outboard is to the right */
export function placedIn(extents: Extents, room: Room, hand: 1 | -1): Placed {
  const wide = VIEW.width - room.inboard - room.outboard;
  const high = VIEW.height - room.top - room.bottom;
  const scale = Math.min(wide / (extents.outboard - extents.inboard), high / (extents.high - extents.low));
  const spare = wide - scale * (extents.outboard - extents.inboard);
  const spareHigh = high - scale * (extents.high - extents.low);
  return (across, up) => {
    const x = room.inboard + spare / 2 + scale * (across - extents.inboard);
    return [hand === 1 ? x : VIEW.width - x, room.top + spareHigh / 2 + scale * (extents.high - up)];
  };
}

/** A dimension up and down at px x, from height to height px, its words to one side of it. */
export function heightDimension(
  x: number,
  from: number,
  to: number,
  text: string,
  anchor: "start" | "end",
): readonly SketchShape[] {
  const aside = anchor === "start" ? 5 : -5;
  return [
    ...arrowLine("thin", [x, from], [x, to]),
    words(text, [x + aside, (from + to) / 2 + 4], anchor, true),
  ];
}

/** A line out to a dimension. */
export function outLine(from: Place, to: Place): SketchShape {
  return { kind: "line", look: "thin", points: [from, to] };
}

/** A small square: a straightedge seen end on. */
export function endOn([x, y]: Place): SketchShape {
  const half = 4.5;
  return {
    kind: "line",
    look: "edge",
    points: [
      [x - half, y - half],
      [x + half, y - half],
      [x + half, y + half],
      [x - half, y + half],
      [x - half, y - half],
    ],
  };
}
