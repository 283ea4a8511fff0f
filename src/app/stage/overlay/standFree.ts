import type { ScreenPoint } from "./gapMark.ts";

/** Room of a picture, pixels, with the labels that stand there. */
export interface Room {
  readonly width: number;
  readonly height: number;
  readonly taken: (ScreenPoint & { readonly width: number })[];
  /** Marks that must stay seen. */
  readonly marks?: readonly ScreenPoint[];
}

/** Pixels that a mark reaches from its middle. */
const MARK = 13;

/** Where a label's middle goes: near what is wanted, inside the picture and on no other; it is noted as taken. @param line pixels that a label is high, with what it keeps free */
export function standFree(wanted: ScreenPoint, width: number, line: number, room: Room): ScreenPoint {
  const half = 0.5 * width + 2;
  const x = Math.max(half, Math.min(room.width - half, wanted.x));
  const clamp = (y: number) => Math.max(line, Math.min(room.height - line, y));
  const isFree = (y: number) =>
    room.taken.every(
      (other) => Math.abs(other.x - x) >= half + 0.5 * other.width || Math.abs(other.y - y) >= line,
    ) &&
    (room.marks ?? []).every(
      (mark) => Math.abs(mark.x - x) >= half + MARK || Math.abs(mark.y - y) >= 0.5 * line + MARK,
    );
  let y = clamp(wanted.y);
  // Down, up, further down, further up …
  for (let k = 1; k < 16 && !isFree(y); k++)
    y = clamp(wanted.y + (k % 2 === 1 ? 1 : -1) * Math.ceil(k / 2) * line);
  room.taken.push({ x, y, width });
  return { x, y };
}
