import type { ScreenPoint } from "./gapMark.ts";

/** Pixels a label stands off its mark, its height with what it keeps free, and what it keeps off the edges. */
const LEADER = 46;
const LINE = 25;
const EDGE = 4;

/**
 * Where the middles of labels go: up and away from the picture's middle, moved up or down until none covers
 * another, inside the picture. In the order given: the first gets the place it wants.
 * @param widths of the labels, pixels; @param taken other labels' middles and widths, to keep clear of
 */
export function placeLabels(
  marks: readonly ScreenPoint[],
  widths: readonly number[],
  width: number,
  height: number,
  taken: readonly (ScreenPoint & { readonly width: number })[] = [],
): ScreenPoint[] {
  const placed: ScreenPoint[] = [];
  const clampY = (y: number) => Math.min(height - EDGE - 0.5 * LINE, Math.max(EDGE + 0.5 * LINE, y));
  for (const [i, mark] of marks.entries()) {
    const half = 0.5 * (widths[i] ?? 0);
    const outward = mark.x < 0.5 * width ? -1 : 1;
    const x = Math.min(width - EDGE - half, Math.max(EDGE + half, mark.x + outward * LEADER));
    const wanted = clampY(mark.y - LEADER);
    const keepsOff = (other: ScreenPoint, width: number, y: number) =>
      Math.abs(other.x - x) >= half + 0.5 * width || Math.abs(other.y - y) >= LINE;
    const isFree = (y: number) =>
      placed.every((other, k) => keepsOff(other, widths[k] ?? 0, y)) &&
      taken.every((other) => keepsOff(other, other.width, y));
    let y = wanted;
    // Down, up, further down, further up … by half lines, as far as the picture is high.
    for (let k = 1; !isFree(y) && k <= (4 * height) / LINE; k++) {
      y = clampY(wanted + (k % 2 === 1 ? 1 : -1) * Math.ceil(k / 2) * 0.5 * LINE);
    }
    placed.push({ x, y });
  }
  return placed;
}
