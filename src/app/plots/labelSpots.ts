import type { Series } from "./plotTypes.ts";

export interface LabelSpot {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "end";
}

/** Height of a label's line in the drawing. */
const LINE = 12;

/**
 * Where the names of curves go: at the end that the curve reaches, pushed apart where two would lie on each other.
 * A plot with one curve needs no name: its title says it.
 */
export function labelSpots(
  series: readonly Series[],
  x: (value: number) => number,
  y: (value: number) => number,
  room: { readonly top: number; readonly bottom: number },
): LabelSpot[] {
  if (series.length < 2) return [];
  const spots = series.flatMap(({ name, points }) => {
    const drawn = points.filter((p) => p.y !== null);
    if (drawn.length === 0) return [];
    const end = drawn.reduce((most, p) => (x(p.x) > x(most.x) ? p : most));
    return [{ name, x: x(end.x) - 4, y: y(end.y as number) - 5, anchor: "end" as const }];
  });
  spots.sort((a, b) => a.y - b.y);
  for (let i = 1; i < spots.length; i++) spots[i]!.y = Math.max(spots[i]!.y, spots[i - 1]!.y + LINE);
  const over = (spots.at(-1)?.y ?? 0) - room.bottom;
  if (over > 0) for (const spot of spots) spot.y -= over;
  for (const spot of spots) spot.y = Math.max(spot.y, room.top);
  return spots;
}
