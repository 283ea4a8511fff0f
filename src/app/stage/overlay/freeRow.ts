import type { ScreenPoint } from "./gapMark.ts";
import { doesCover } from "./placeLabels.ts";
import type { Room } from "./standFree.ts";

/** Pixels of a row of names, and from the picture's foot to the middle of the lowest. */
const ROW = 20;
const FOOT = 16;

/** Share of the picture's height that names at its foot may go up. */
const HIGHEST = 0.5;

/**
 * The middle of the lowest row at a picture's foot in which names lie on no label and on no line; the lowest where none is free.
 * @param middles of the names, and their @param widths, pixels
 */
export function freeRow(
  middles: readonly number[],
  widths: readonly number[],
  { height, taken, lines = [] }: Omit<Room, "width" | "marks">,
): number {
  const lowest = height - FOOT;
  const isFree = (y: number) =>
    middles.every((x, i) => {
      const half = 0.5 * widths[i]! + 2;
      return (
        taken.every(
          (other) => Math.abs(other.x - x) >= half + 0.5 * other.width || Math.abs(other.y - y) >= ROW,
        ) && lines.every((points) => isOff(points, { x, y }, half))
      );
    });
  for (let y = lowest; y > HIGHEST * height; y -= ROW) if (isFree(y)) return y;
  return lowest;
}

function isOff(points: readonly ScreenPoint[], at: ScreenPoint, half: number): boolean {
  return points.slice(1).every((to, i) => !doesCover(at, half, points[i]!, to, 0.5 * ROW));
}
