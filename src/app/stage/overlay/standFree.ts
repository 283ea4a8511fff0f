import type { ScreenPoint } from "./gapMark.ts";
import { doesCover } from "./placeLabels.ts";

/** Room of a picture, pixels, with the labels that stand there. */
export interface Room {
  readonly width: number;
  readonly height: number;
  readonly taken: (ScreenPoint & { readonly width: number })[];
  /** Marks that must stay seen. */
  readonly marks?: readonly ScreenPoint[];
  /** Lines that no label is to lie on while there is another place: it goes to their side too. */
  readonly lines?: readonly (readonly ScreenPoint[])[];
}

/** Pixels that a mark reaches from its middle. */
const MARK = 13;

/** Lines of text up or down, and widths of the label to either side, that it goes. */
const ROWS = 8;
const COLUMNS = [0, -0.25, 0.25, -0.5, 0.5, -0.75, 0.75, -1, 1];

/** Where a label's middle goes: near what is wanted, inside the picture and on no other; it is noted as taken. @param line pixels that a label is high, with what it keeps free */
export function standFree(wanted: ScreenPoint, width: number, line: number, room: Room): ScreenPoint {
  const half = 0.5 * width + 2;
  const inside = ({ x, y }: ScreenPoint): ScreenPoint => ({
    x: Math.max(half, Math.min(room.width - half, x)),
    y: Math.max(line, Math.min(room.height - line, y)),
  });
  const isFree = ({ x, y }: ScreenPoint) =>
    room.taken.every(
      (other) => Math.abs(other.x - x) >= half + 0.5 * other.width || Math.abs(other.y - y) >= line,
    ) &&
    (room.marks ?? []).every(
      (mark) => Math.abs(mark.x - x) >= half + MARK || Math.abs(mark.y - y) >= 0.5 * line + MARK,
    );
  // Down, up, further down, further up …
  const rows = Array.from({ length: 2 * ROWS }, (_, k) => (k % 2 === 1 ? 1 : -1) * Math.ceil(k / 2) * line);
  const lines = (room.lines ?? []).flatMap((points) =>
    points.slice(1).map((to, i): readonly [ScreenPoint, ScreenPoint] => [points[i]!, to]),
  );
  const isOffLines = (at: ScreenPoint) =>
    lines.every(([from, to]) => !doesCover(at, half, from, to, 0.5 * line));
  const offLines = () =>
    COLUMNS.flatMap((share) => rows.map((down) => ({ right: share * width, down })))
      .sort((a, b) => Math.hypot(a.right, a.down) - Math.hypot(b.right, b.down))
      .map(({ right, down }) => inside({ x: wanted.x + right, y: wanted.y + down }))
      .find((at) => isFree(at) && isOffLines(at));
  const places = rows.map((down) => inside({ x: wanted.x, y: wanted.y + down }));
  const at = (lines.length > 0 ? offLines() : undefined) ?? places.find(isFree) ?? places.at(-1)!;
  room.taken.push({ ...at, width });
  return at;
}
