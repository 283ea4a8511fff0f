import type { PageLine } from "../../geometry/page.ts";
import type { Drawn } from "./pageParts.ts";

/** x, y of the low and the high corner. */
export type Window = readonly [x0: number, y0: number, x1: number, y1: number];

/** Straight pieces that a circle is drawn with where a window cuts it. */
const CIRCLE_PIECES = 180;

/** What of a drawing lies in a window. Lines are cut at its edges; of texts those that begin in it are there, whole. */
export function clipped({ lines, circles, texts }: Drawn, window: Window): Drawn {
  const rounds = circles.map((circle) => ({ circle, place: placeOf(circle.center, circle.radius, window) }));
  return {
    lines: [
      ...lines.flatMap((line) => clippedLine(line, window)),
      ...rounds.flatMap(({ circle, place }) =>
        place === "cut" ? clippedLine(polygonOf(circle), window) : [],
      ),
    ],
    circles: rounds.filter(({ place }) => place === "inside").map(({ circle }) => circle),
    texts: texts.filter(
      ({ at: [x, y] }) => x >= window[0] && x < window[2] && y >= window[1] && y < window[3],
    ),
  };
}

function placeOf([x, y]: readonly [number, number], radius: number, [x0, y0, x1, y1]: Window) {
  if (x - radius >= x0 && x + radius <= x1 && y - radius >= y0 && y + radius <= y1) return "inside";
  const isOff = x + radius < x0 || x - radius > x1 || y + radius < y0 || y - radius > y1;
  return isOff ? "outside" : "cut";
}

function polygonOf({ pen, center, radius }: Drawn["circles"][number]): PageLine {
  const points = Array.from({ length: CIRCLE_PIECES }, (_, i) => {
    const turn = (2 * Math.PI * i) / CIRCLE_PIECES;
    return [center[0] + radius * Math.cos(turn), center[1] + radius * Math.sin(turn)];
  });
  return { pen, points: points.flat(), closed: true };
}

/** Its pieces within the window, joined where they follow on each other; whole where nothing is cut off. */
function clippedLine(line: PageLine, window: Window): PageLine[] {
  const { pen, points, closed = false } = line;
  const count = points.length / 2;
  const runs: number[][] = [];
  let isWhole = true;
  for (let i = 0; i < (closed ? count : count - 1); i++) {
    const [a, b] = [2 * i, 2 * ((i + 1) % count)];
    const ends = [points[a]!, points[a + 1]!, points[b]!, points[b + 1]!] as const;
    const piece = clippedPiece(ends, window);
    if (piece === null || piece.some((value, j) => value !== ends[j])) isWhole = false;
    if (piece === null) continue;
    const last = runs.at(-1);
    if (last && last.at(-2) === piece[0] && last.at(-1) === piece[1]) last.push(piece[2], piece[3]);
    else runs.push([...piece]);
  }
  return isWhole ? [line] : runs.map((run) => ({ pen, points: run }));
}

/** Liang and Barsky's way: the share of the piece that lies within each of the four edges. null = none of some length. */
function clippedPiece(
  [ax, ay, bx, by]: readonly [number, number, number, number],
  [x0, y0, x1, y1]: Window,
): readonly [number, number, number, number] | null {
  let [from, to] = [0, 1];
  for (const [way, room] of [
    [ax - bx, ax - x0],
    [bx - ax, x1 - ax],
    [ay - by, ay - y0],
    [by - ay, y1 - ay],
  ] as const) {
    if (way === 0) {
      if (room < 0) return null;
    } else if (way < 0) from = Math.max(from, room / way);
    else to = Math.min(to, room / way);
  }
  if (!(from < to)) return null;
  const at = (share: number): readonly [number, number] =>
    share === 0 ? [ax, ay] : share === 1 ? [bx, by] : [ax + share * (bx - ax), ay + share * (by - ay)];
  return [...at(from), ...at(to)];
}
