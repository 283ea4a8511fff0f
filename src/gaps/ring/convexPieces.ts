import earcut from "earcut";

/** Numbers of one edge of an outline: start x, r; unit direction x, r; length. The outline lies to its left. */
export const EDGE_ROW = 5;

/** A closed polygon in the meridian plane, [x, r] points, counterclockwise, no point twice. */
export type Polygon = readonly (readonly [x: number, r: number])[];

/** Twice the signed area, + = counterclockwise. */
export function doubleArea(polygon: Polygon): number {
  let sum = 0;
  for (let i = 0; i < polygon.length; i++) {
    const [x0, r0] = polygon[i]!;
    const [x1, r1] = polygon[(i + 1) % polygon.length]!;
    sum += x0 * r1 - x1 * r0;
  }
  return sum;
}

/** Twice the area of a, b, c; + = the turn at b is to the left. */
function turn(a: Polygon[number], b: Polygon[number], c: Polygon[number]): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/**
 * Splits a simple polygon into convex pieces that cover it exactly: triangles, then every inner edge
 * dropped whose removal keeps the joined piece convex (Hertel and Mehlhorn, 1983: at most four times
 * the least number of pieces). Pieces come counterclockwise.
 */
export function convexPieces(polygon: Polygon): Polygon[] {
  const flat = polygon.flat();
  const triangles = earcut(flat);
  let pieces: number[][] = [];
  for (let i = 0; i < triangles.length; i += 3) {
    const piece = [triangles[i]!, triangles[i + 1]!, triangles[i + 2]!];
    const area = turn(polygon[piece[0]!]!, polygon[piece[1]!]!, polygon[piece[2]!]!);
    if (area < 0) piece.reverse();
    if (area !== 0) pieces.push(piece);
  }
  for (let joined = true; joined; ) {
    joined = false;
    search: for (let i = 0; i < pieces.length; i++) {
      for (let j = i + 1; j < pieces.length; j++) {
        const merged = merge(polygon, pieces[i]!, pieces[j]!);
        if (merged === null) continue;
        pieces = pieces.filter((_, k) => k !== i && k !== j);
        pieces.push(merged);
        joined = true;
        break search;
      }
    }
  }
  return pieces.map((piece) => piece.map((i) => polygon[i]!));
}

/** Two pieces joined across the edge they share, or null when they share none or the join is not convex. */
function merge(polygon: Polygon, a: readonly number[], b: readonly number[]): number[] | null {
  for (let i = 0; i < a.length; i++) {
    const from = a[i]!;
    const to = a[(i + 1) % a.length]!;
    const j = b.indexOf(to);
    if (j < 0 || b[(j + 1) % b.length] !== from) continue;
    const joined = [
      ...a.slice(i + 1),
      ...a.slice(0, i + 1),
      ...[...b.slice(j + 1), ...b.slice(0, j)].slice(1),
    ];
    return isConvex(polygon, joined) ? joined : null;
  }
  return null;
}

function isConvex(polygon: Polygon, piece: readonly number[]): boolean {
  const n = piece.length;
  return piece.every(
    (p, i) => turn(polygon[p]!, polygon[piece[(i + 1) % n]!]!, polygon[piece[(i + 2) % n]!]!) >= 0,
  );
}

/** The convex hull of points, counterclockwise (Andrew's monotone chain, 1979). */
export function convexHull(points: Polygon): Polygon {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: Polygon) => {
    const chain: Polygon[number][] = [];
    for (const p of list) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, p) <= 0) chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
