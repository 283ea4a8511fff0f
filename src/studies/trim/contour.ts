import { joinPieces, type Piece } from "../section/joinPieces.ts";
import type { Outline } from "../section/outline.ts";

/** Where lines are looked for, and how fine: low and high corner, and the side of the cells they are read from. */
export interface ContourGrid {
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
  readonly cell: number;
}

/** How much less than a distance a value may change over it: values are found to a little. */
const LOOSE = 1.05;

/** Corners of a cell in turn, counterclockwise. */
const CORNERS = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

/**
 * The closed lines about all places where a value is below 0, counterclockwise; nothing outside of the grid is. Squares are halved
 * down to the cells about the line: the value must change by no more than the way, but for `slack`.
 * @param value once it is sure to be more than `far` it need not be exact
 * @returns null once `isSpent` says so
 */
export function contourOf(
  value: (u: number, v: number, far: number) => number,
  { low, high, cell }: ContourGrid,
  slack: number,
  isSpent: () => boolean,
): readonly Outline[] | null {
  const room = Math.max(high[0] - low[0], high[1] - low[1]) + 2 * cell;
  let across = 1;
  while (across * cell < room) across *= 2;
  const [u0, v0] = [low[0] - cell, low[1] - cell];
  const known = new Map<number, number>();
  const outside = (u: number, v: number) => Math.max(low[0] - u, u - high[0], low[1] - v, v - high[1]);
  const valueAt = (u: number, v: number, far: number) => {
    const out = outside(u, v);
    return out > far ? out : Math.max(out, value(u, v, far));
  };
  const lattice = (i: number, j: number): number => {
    const key = j * (across + 1) + i;
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = valueAt(u0 + i * cell, v0 + j * cell, 2 * cell);
    known.set(key, made);
    return made;
  };
  const nodes = new Map<number, number>();
  const points: number[] = [];
  const pieces: Piece[] = [];
  /** The node on an edge of the lattice: from a corner to the right (0) or up (1). */
  const nodeOn = (i: number, j: number, way: 0 | 1): number => {
    const key = 2 * (j * (across + 1) + i) + way;
    const found = nodes.get(key);
    if (found !== undefined) return found;
    const [a, b] = [lattice(i, j), way === 0 ? lattice(i + 1, j) : lattice(i, j + 1)];
    const share = a / (a - b);
    points.push(u0 + (i + (way === 0 ? share : 0)) * cell, v0 + (j + (way === 1 ? share : 0)) * cell);
    nodes.set(key, points.length / 2 - 1);
    return points.length / 2 - 1;
  };
  const march = (i: number, j: number) => {
    const isIn = CORNERS.map(([di, dj]) => lattice(i + di, j + dj) < 0);
    const edges = [
      () => nodeOn(i, j, 0),
      () => nodeOn(i + 1, j, 1),
      () => nodeOn(i, j + 1, 0),
      () => nodeOn(i, j, 1),
    ] as const;
    const sides = [0, 1, 2, 3] as const;
    const leaves = sides.filter((k) => isIn[k] && !isIn[(k + 1) % 4]);
    const enters = sides.filter((k) => !isIn[k] && isIn[(k + 1) % 4]);
    // Of two corners across from each other either each stands alone, or both are one.
    const isJoined = CORNERS.reduce((sum, [di, dj]) => sum + lattice(i + di, j + dj), 0) < 0;
    for (const leave of leaves) {
      const to = leaves.length === 1 ? enters[0]! : (leave + (isJoined ? 1 : 3)) % 4;
      // Inside lies on the left.
      pieces.push({ from: edges[leave](), to: edges[to as 0 | 1 | 2 | 3]() });
    }
  };
  const halve = (i: number, j: number, size: number): boolean => {
    if (size === 1) {
      march(i, j);
      return true;
    }
    if (isSpent()) return false;
    const half = size / 2;
    const far = LOOSE * Math.SQRT1_2 * size * cell + slack;
    const [u, v] = [u0 + (i + half) * cell, v0 + (j + half) * cell];
    if (Math.abs(valueAt(u, v, far)) > far) return true;
    return CORNERS.every(([di, dj]) => halve(i + di * half, j + dj * half, half));
  };
  if (!halve(0, 0, across)) return null;
  return joinPieces(pieces, points);
}
