import { EDGE_ROW } from "./convexPieces.ts";

/** mm. How much too deep the answer may be. */
const DEEPEST_SLACK = 0.005;

/** Squares looked at before the answer is left looser than that. */
const MOST_SQUARES = 20_000;

/**
 * Upper bound of the radius of the largest circle inside an outline, by halving squares, at most `DEEPEST_SLACK` too
 * much. Over a square the depth is at most the distance to any edge, and so at most the mean of two such; a distance
 * to a segment is convex, as is a mean of them, so its greatest value stands at a corner of the square. The mean with
 * the edge across settles a flat ridge between two edges at once, where one distance alone would not.
 * @param edges edge rows of a closed outline.
 */
export function deepestIn(edges: Float64Array): number {
  const box = boxOf(edges);
  const size = 0.5 * Math.max(box.highX - box.lowX, box.highR - box.lowR);
  // Rows of middle and half size, large squares first: what is found amid them rules out most small ones.
  const squares = [0.5 * (box.lowX + box.highX), 0.5 * (box.lowR + box.highR), size];
  let best = 0;
  let left = 0;
  for (let at = 0; at < squares.length; at += 3) {
    const x = squares[at]!;
    const r = squares[at + 1]!;
    const half = squares[at + 2]!;
    const depth = depthAt(edges, x, r);
    if (depth > best) best = depth;
    const lipschitz = depth + half * Math.SQRT2;
    if (lipschitz <= best + DEEPEST_SLACK) continue;
    const bound = Math.min(lipschitz, meansOver(edges, x, r, half));
    if (bound <= best + DEEPEST_SLACK) continue;
    if (at >= 3 * MOST_SQUARES) {
      left = Math.max(left, bound);
      continue;
    }
    const h = 0.5 * half;
    squares.push(x - h, r - h, h, x + h, r - h, h, x - h, r + h, h, x + h, r + h, h);
  }
  return Math.max(best + DEEPEST_SLACK, left);
}

function boxOf(edges: Float64Array) {
  const box = {
    lowX: Number.POSITIVE_INFINITY,
    highX: Number.NEGATIVE_INFINITY,
    lowR: Number.POSITIVE_INFINITY,
    highR: Number.NEGATIVE_INFINITY,
  };
  for (let i = 0; i < edges.length; i += EDGE_ROW) {
    box.lowX = Math.min(box.lowX, edges[i]!);
    box.highX = Math.max(box.highX, edges[i]!);
    box.lowR = Math.min(box.lowR, edges[i + 1]!);
    box.highR = Math.max(box.highR, edges[i + 1]!);
  }
  return box;
}

/** Least, over all edges, of the greatest mean of the distances to that edge and to the one nearest the middle. */
function meansOver(edges: Float64Array, x: number, r: number, half: number): number {
  let nearest = 0;
  let nearestSq = Number.POSITIVE_INFINITY;
  for (let i = 0; i < edges.length; i += EDGE_ROW) {
    const sq = squareTo(edges, i, x, r);
    if (sq < nearestSq) {
      nearestSq = sq;
      nearest = i;
    }
  }
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < edges.length; i += EDGE_ROW) {
    let most = 0;
    for (let corner = 0; corner < 4; corner++) {
      const cx = x + (corner & 1 ? half : -half);
      const cr = r + (corner & 2 ? half : -half);
      const mean =
        0.5 * (Math.sqrt(squareTo(edges, nearest, cx, cr)) + Math.sqrt(squareTo(edges, i, cx, cr)));
      if (mean > most) most = mean;
    }
    if (most < least) least = most;
  }
  return least;
}

/** Squared distance to one edge. */
function squareTo(edges: Float64Array, at: number, x: number, r: number): number {
  const dx = x - edges[at]!;
  const dr = r - edges[at + 1]!;
  const foot = dx * edges[at + 2]! + dr * edges[at + 3]!;
  const length = edges[at + 4]!;
  const along = foot < 0 ? 0 : foot > length ? length : foot;
  const qx = dx - along * edges[at + 2]!;
  const qr = dr - along * edges[at + 3]!;
  return qx * qx + qr * qr;
}

/** Distance to the outline, + inside (even-odd crossings), − outside. */
function depthAt(edges: Float64Array, x: number, r: number): number {
  let leastSq = Number.POSITIVE_INFINITY;
  let inside = false;
  for (let i = 0; i < edges.length; i += EDGE_ROW) {
    const sq = squareTo(edges, i, x, r);
    if (sq < leastSq) leastSq = sq;
    const er = edges[i + 3]!;
    const r0 = edges[i + 1]!;
    const r1 = r0 + edges[i + 4]! * er;
    if (r0 > r !== r1 > r && x < edges[i]! + ((r - r0) * edges[i + 2]!) / er) inside = !inside;
  }
  return inside ? Math.sqrt(leastSq) : -Math.sqrt(leastSq);
}
