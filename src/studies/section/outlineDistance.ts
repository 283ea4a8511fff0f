import { type Outline, segmentCount } from "./outline.ts";

/**
 * Least distance on the sheet between two sets of outlines, mm, measured between their straight pieces; 0 where
 * they cross or one holds a point of the other (closed outlines hold what is inside, holes left out).
 * null when either set is empty.
 */
export function outlineDistance(a: readonly Outline[], b: readonly Outline[]): number | null {
  if (a.length === 0 || b.length === 0) return null;
  if (a.some((one) => holds(b, one.points)) || b.some((one) => holds(a, one.points))) return 0;
  let bestSq = Number.POSITIVE_INFINITY;
  for (const one of a) for (const other of b) bestSq = Math.min(bestSq, piecewise(one, other, bestSq));
  return Math.sqrt(bestSq);
}

/** Whether the first point of a row lies inside, by even-odd crossings with the closed outlines. */
function holds(outlines: readonly Outline[], point: Float64Array): boolean {
  const [u, v] = [point[0]!, point[1]!];
  let inside = false;
  for (const { points, closed } of outlines) {
    if (!closed) continue;
    for (let i = 0, j = points.length - 2; i < points.length; j = i, i += 2) {
      const [vi, vj] = [points[i + 1]!, points[j + 1]!];
      if (vi > v === vj > v) continue;
      if (u < points[i]! + ((v - vi) / (vj - vi)) * (points[j]! - points[i]!)) inside = !inside;
    }
  }
  return inside;
}

function piecewise(one: Outline, other: Outline, limitSq: number): number {
  let bestSq = limitSq;
  const counts = [segmentCount(one), segmentCount(other)] as const;
  for (let i = 0; i < counts[0]; i++) {
    for (let j = 0; j < counts[1]; j++) {
      if (boxGapSq(one.points, i, other.points, j) >= bestSq) continue;
      bestSq = Math.min(bestSq, segmentGapSq(one.points, i, other.points, j));
    }
  }
  return bestSq;
}

function boxGapSq(a: Float64Array, i: number, b: Float64Array, j: number): number {
  let sq = 0;
  for (let axis = 0; axis < 2; axis++) {
    const [a0, a1] = [at(a, i, axis), at(a, i + 1, axis)];
    const [b0, b1] = [at(b, j, axis), at(b, j + 1, axis)];
    const gap = Math.max(Math.min(a0, a1) - Math.max(b0, b1), Math.min(b0, b1) - Math.max(a0, a1), 0);
    sq += gap * gap;
  }
  return sq;
}

/** Squared distance between two straight pieces: 0 where they cross, else the nearest of an end to the other. */
function segmentGapSq(a: Float64Array, i: number, b: Float64Array, j: number): number {
  const turn = (row: Float64Array, k: number, u: number, v: number) =>
    (at(row, k + 1, 0) - at(row, k, 0)) * (v - at(row, k, 1)) -
    (at(row, k + 1, 1) - at(row, k, 1)) * (u - at(row, k, 0));
  const splitsB = turn(a, i, at(b, j, 0), at(b, j, 1)) * turn(a, i, at(b, j + 1, 0), at(b, j + 1, 1)) < 0;
  const splitsA = turn(b, j, at(a, i, 0), at(a, i, 1)) * turn(b, j, at(a, i + 1, 0), at(a, i + 1, 1)) < 0;
  if (splitsA && splitsB) return 0;
  return Math.min(
    pointGapSq(a, i, at(b, j, 0), at(b, j, 1)),
    pointGapSq(a, i, at(b, j + 1, 0), at(b, j + 1, 1)),
    pointGapSq(b, j, at(a, i, 0), at(a, i, 1)),
    pointGapSq(b, j, at(a, i + 1, 0), at(a, i + 1, 1)),
  );
}

function pointGapSq(row: Float64Array, k: number, u: number, v: number): number {
  const [u0, v0] = [at(row, k, 0), at(row, k, 1)];
  const [du, dv] = [at(row, k + 1, 0) - u0, at(row, k + 1, 1) - v0];
  const lengthSq = du * du + dv * dv;
  const share = lengthSq > 0 ? Math.min(Math.max(((u - u0) * du + (v - v0) * dv) / lengthSq, 0), 1) : 0;
  return (u - u0 - share * du) ** 2 + (v - v0 - share * dv) ** 2;
}

/** Coordinate of point k, counted around. */
function at(row: Float64Array, k: number, axis: number): number {
  const i = 2 * k + axis;
  return row[i < row.length ? i : i - row.length]!;
}
