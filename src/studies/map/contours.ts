import type { ClearanceMap, MapSide } from "./clearanceMap.ts";

/** A line in a map: travel (mm) and steer of each point, two numbers a point; a closed line ends where it begins. */
export type Contour = Float64Array;

/**
 * Where a side's gap passes `level`, mm, as lines: that of what moves, unless what rides together is below everywhere. Marching squares with straight
 * interpolation along the grid's edges: between grid points a line is a drawing, not a proof (`steerLimits` is).
 * Lines end at the map's edge and at the last cells in reach: a square with a corner out of reach has none.
 * In a square with two opposite corners below, the mean of the four decides which belong together.
 */
export function contoursOf(
  { travels, steers }: ClearanceMap,
  { moving, together }: Pick<MapSide, "moving" | "together">,
  level: number,
): Contour[] {
  if (together < level) return [];
  const rows = travels.length;
  const cols = steers.length;
  // Grid edges are numbered: first those along a row, then those along a column; each has up to two line neighbors.
  const upright = rows * cols;
  const links = new Int32Array(4 * rows * cols).fill(-1);
  for (let row = 0; row + 1 < rows; row++) {
    for (let col = 0; col + 1 < cols; col++) {
      const cell = row * cols + col;
      const a = moving[cell]!;
      const b = moving[cell + 1]!;
      const c = moving[cell + cols + 1]!;
      const d = moving[cell + cols]!;
      if (!Number.isFinite(a + b + c + d)) continue;
      const [low, right, high, left] = [cell, upright + cell + 1, cell + cols, upright + cell];
      const crossed = [
        a < level !== b < level ? low : -1,
        b < level !== c < level ? right : -1,
        c < level !== d < level ? high : -1,
        d < level !== a < level ? left : -1,
      ].filter((edge) => edge >= 0);
      if (crossed.length === 2) link(links, crossed[0]!, crossed[1]!);
      else if (crossed.length === 4) {
        // Corners a and c are alike: with the middle like them, the lines cut off b and d.
        if (0.25 * (a + b + c + d) < level === a < level) {
          link(links, low, right);
          link(links, high, left);
        } else {
          link(links, left, low);
          link(links, right, high);
        }
      }
    }
  }
  return chains(links).map((edges) => {
    const line = new Float64Array(2 * edges.length);
    edges.forEach((edge, i) => {
      const from = edge < upright ? edge : edge - upright;
      const to = edge < upright ? from + 1 : from + cols;
      const share = (level - moving[from]!) / (moving[to]! - moving[from]!);
      line[2 * i] = between(travels, Math.floor(from / cols), Math.floor(to / cols), share);
      line[2 * i + 1] = between(steers, from % cols, to % cols, share);
    });
    return line;
  });
}

/** Where a limit of either wheel begins to be passed, as lines; likewise a drawing. */
export function limitBorderOf(map: ClearanceMap): Contour[] {
  return map.pastLimit === null
    ? []
    : contoursOf(map, { moving: map.pastLimit.share, together: Number.POSITIVE_INFINITY }, 0);
}

function between(values: Float64Array, from: number, to: number, share: number): number {
  return from === to ? values[from]! : values[from]! + share * (values[to]! - values[from]!);
}

function link(links: Int32Array, a: number, b: number): void {
  links[2 * a + (links[2 * a] === -1 ? 0 : 1)] = b;
  links[2 * b + (links[2 * b] === -1 ? 0 : 1)] = a;
}

/** Runs along linked edges: open lines from an end, then what is left, closed. */
function chains(links: Int32Array): number[][] {
  const seen = new Uint8Array(links.length / 2);
  const lines: number[][] = [];
  for (const open of [true, false]) {
    for (let start = 0; start < seen.length; start++) {
      if (seen[start] === 1 || links[2 * start] === -1 || (open && links[2 * start + 1] !== -1)) continue;
      const line = [start];
      seen[start] = 1;
      for (let at = start; ; ) {
        const next = [links[2 * at]!, links[2 * at + 1]!].find((edge) => edge !== -1 && seen[edge] === 0);
        if (next === undefined) break;
        seen[next] = 1;
        line.push(next);
        at = next;
      }
      if (!open) line.push(start);
      lines.push(line);
    }
  }
  return lines;
}
