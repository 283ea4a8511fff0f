import type { ScreenPoint } from "./gapMark.ts";

/** Pixels a label stands off its mark, and what it keeps free around it. */
const LEADER = 46;
const CLEARANCE = { x: 96, y: 25 };
const EDGE = { x: 54, y: 16 };

/**
 * Where labels go: up and away from the picture's middle, moved up or down until none covers another, inside the
 * picture. In the order given: the first gets the place it wants.
 */
export function placeLabels(marks: readonly ScreenPoint[], width: number, height: number): ScreenPoint[] {
  const placed: ScreenPoint[] = [];
  const clampY = (y: number) => Math.min(height - EDGE.y, Math.max(EDGE.y, y));
  for (const mark of marks) {
    const outward = mark.x < 0.5 * width ? -1 : 1;
    const x = Math.min(width - EDGE.x, Math.max(EDGE.x, mark.x + outward * LEADER));
    const wanted = clampY(mark.y - LEADER);
    const isFree = (y: number) =>
      placed.every((other) => Math.abs(other.x - x) >= CLEARANCE.x || Math.abs(other.y - y) >= CLEARANCE.y);
    let y = wanted;
    for (let k = 1; !isFree(y) && k <= 2 * marks.length; k++) {
      y = clampY(wanted + (k % 2 === 1 ? 1 : -1) * Math.ceil(k / 2) * CLEARANCE.y);
    }
    placed.push({ x, y });
  }
  return placed;
}
