import type { SheetLine } from "./bodyDrawing.ts";
import type { Box } from "./drawingFrame.ts";
import type { PagePoint } from "./placeTexts.ts";

/** The leftmost point of lines as far as they lie in a box; null = none of them does. Points and box in px. */
export function leftmostIn(lines: readonly SheetLine[], box: Box): PagePoint | null {
  let found: PagePoint | null = null;
  for (const { points, isClosed } of lines)
    points.forEach((to, i) => {
      const from = points[i - 1] ?? (isClosed ? points.at(-1)! : to);
      for (const end of endsIn(from, to, box)) if (found === null || end[0] < found[0]) found = end;
    });
  return found;
}

/** Both ends of a straight line's part in a box (Liang and Barsky 1984, from memory); none = it misses the box. */
function endsIn(from: PagePoint, to: PagePoint, box: Box): readonly PagePoint[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  let [start, end] = [0, 1];
  for (const [over, along] of [
    [box.left - from[0], dx],
    [from[0] - box.right, -dx],
    [box.top - from[1], dy],
    [from[1] - box.foot, -dy],
  ] as const) {
    if (along === 0) {
      if (over > 0) return [];
    } else if (along > 0) start = Math.max(start, over / along);
    else end = Math.min(end, over / along);
  }
  if (start > end) return [];
  return [start, end].map((share) => [from[0] + share * dx, from[1] + share * dy]);
}
