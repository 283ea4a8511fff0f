import type { Outline } from "../section/outline.ts";

/** A closed line cut off at the edges of a rectangle (Sutherland and Hodgman); null where nothing of it lies inside. */
export function clippedToRect(
  { points }: Outline,
  low: readonly [number, number],
  high: readonly [number, number],
): Outline | null {
  let kept = [...points];
  for (const [axis, end, way] of [
    [0, low[0], 1],
    [0, high[0], -1],
    [1, low[1], 1],
    [1, high[1], -1],
  ] as const)
    kept = cutOff(kept, axis, end, way);
  return kept.length < 6 ? null : { points: Float64Array.from(kept), closed: true };
}

/** What lies on one side of a line across an axis. */
function cutOff(points: readonly number[], axis: 0 | 1, end: number, way: 1 | -1): number[] {
  const kept: number[] = [];
  for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
    const [a, b] = [way * (points[j + axis]! - end), way * (points[i + axis]! - end)];
    if (a < 0 !== b < 0) {
      const share = a / (a - b);
      const met = [0, 1].map((k) => points[j + k]! + share * (points[i + k]! - points[j + k]!));
      met[axis] = end;
      kept.push(...met);
    }
    if (b >= 0) kept.push(points[i]!, points[i + 1]!);
  }
  return kept;
}
