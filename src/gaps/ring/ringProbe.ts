import { EDGE_ROW } from "./convexPieces.ts";
import type { RingShape } from "./ringShape.ts";

/**
 * The ring seen from one point of the meridian plane. A probe is memory the caller owns; `probeRing`
 * fills it and keeps nothing.
 */
export interface RingProbe {
  /** Signed distance to the ring, mm, negative inside. */
  distance: number;
  /** Unit direction of growing distance at the point: along x, along r. */
  gradientX: number;
  gradientR: number;
  /** Rows of (signed distance, gradient x, gradient r), one a convex piece, in the shape's order. */
  readonly pieces: Float64Array;
  /** The same for the convex hull of the section; filled only where the point is inside the hull. */
  hullDistance: number;
  hullGradientX: number;
  hullGradientR: number;
}

/** More pieces than this and `ringProbe` refuses: a section is a dozen points, not a drawing. */
const MOST_PIECES = 512;

export function ringProbe(): RingProbe {
  return {
    distance: 0,
    gradientX: 0,
    gradientR: 0,
    pieces: new Float64Array(MOST_PIECES * 3),
    hullDistance: 0,
    hullGradientX: 0,
    hullGradientR: 0,
  };
}

// Leaf scratch of `convexDistance`: the direction it found.
let foundX = 0;
let foundR = 0;

/**
 * Signed distance from (x, r) to a convex polygon, exact; leaves the outward unit direction in scratch.
 * For a convex polygon this direction is a subgradient of the signed distance everywhere, inside and out:
 * distance(q) ≥ distance(p) + direction·(q − p) for every q. All pruning rests on that.
 */
function convexDistance(edges: Float64Array, from: number, to: number, x: number, r: number): number {
  let most = Number.NEGATIVE_INFINITY;
  let mostAt = from;
  let leastSq = Number.POSITIVE_INFINITY;
  let leastX = 0;
  let leastR = 0;
  for (let i = from * EDGE_ROW; i < to * EDGE_ROW; i += EDGE_ROW) {
    const dx = x - edges[i]!;
    const dr = r - edges[i + 1]!;
    const ex = edges[i + 2]!;
    const er = edges[i + 3]!;
    const off = dx * er - dr * ex;
    if (off > most) {
      most = off;
      mostAt = i;
    }
    if (off > 0) {
      const len = edges[i + 4]!;
      let along = dx * ex + dr * er;
      along = along < 0 ? 0 : along > len ? len : along;
      const qx = dx - along * ex;
      const qr = dr - along * er;
      const sq = qx * qx + qr * qr;
      if (sq < leastSq) {
        leastSq = sq;
        leastX = qx;
        leastR = qr;
      }
    }
  }
  if (most > 0) {
    const d = Math.sqrt(leastSq);
    if (d > 0) {
      foundX = leastX / d;
      foundR = leastR / d;
      return d;
    }
  }
  foundX = edges[mostAt + 3]!;
  foundR = -edges[mostAt + 2]!;
  return most;
}

/** Distance from (x, r) to the outline itself; leaves the unit direction from the point to the outline. */
function outlineDistance(edges: Float64Array, x: number, r: number): number {
  let leastSq = Number.POSITIVE_INFINITY;
  let leastX = 0;
  let leastR = 0;
  let leastAt = 0;
  for (let i = 0; i < edges.length; i += EDGE_ROW) {
    const dx = x - edges[i]!;
    const dr = r - edges[i + 1]!;
    const ex = edges[i + 2]!;
    const er = edges[i + 3]!;
    const len = edges[i + 4]!;
    let along = dx * ex + dr * er;
    along = along < 0 ? 0 : along > len ? len : along;
    const qx = dx - along * ex;
    const qr = dr - along * er;
    const sq = qx * qx + qr * qr;
    if (sq < leastSq) {
      leastSq = sq;
      leastX = qx;
      leastR = qr;
      leastAt = i;
    }
  }
  const d = Math.sqrt(leastSq);
  if (d > 0) {
    foundX = -leastX / d;
    foundR = -leastR / d;
  } else {
    foundX = edges[leastAt + 3]!;
    foundR = -edges[leastAt + 2]!;
  }
  return d;
}

/**
 * Looks at the ring from the point (x along the wheel axis from the wheel center, r ≥ 0 from the axis).
 * Exact for any section: outside, the nearest of the convex pieces; inside, the nearest of the outline.
 * Because the ring is a solid of revolution, the nearest point of it lies in the same meridian plane.
 */
export function probeRing(probe: RingProbe, shape: RingShape, x: number, r: number): void {
  const { pieces, pieceStarts, boundary, hull } = shape;
  const count = pieceStarts.length - 1;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < count; k++) {
    const d = convexDistance(pieces, pieceStarts[k]!, pieceStarts[k + 1]!, x, r);
    probe.pieces[3 * k] = d;
    probe.pieces[3 * k + 1] = foundX;
    probe.pieces[3 * k + 2] = foundR;
    if (d < least) {
      least = d;
      probe.gradientX = foundX;
      probe.gradientR = foundR;
    }
  }
  if (least > 0) probe.distance = least;
  else {
    probe.distance = -outlineDistance(boundary, x, r);
    probe.gradientX = foundX;
    probe.gradientR = foundR;
  }
  probe.hullDistance = convexDistance(hull, 0, hull.length / EDGE_ROW, x, r);
  probe.hullGradientX = foundX;
  probe.hullGradientR = foundR;
}

/** Two planes under the depth inside the ring, found by `probeInside`: value, direction x, direction r each. */
export const insidePlanes = new Float64Array(6);

/**
 * Inside the ring the signed distance is the greatest of the (negative) distances to its edges; where an
 * edge's foot stays on the edge, that is a plane over the meridian plane. Fills `insidePlanes` with the
 * nearest such edge and the one that most opposes it near the point; together they bound a ridge, where
 * two edges are equally near and one plane alone would fall away past it.
 * @param most how far points may lie from (x, r): feet must stay on their edges over that whole disk, and
 * the disk must lie inside the ring. @returns how many planes were found, 0 to 2.
 */
export function probeInside(shape: RingShape, x: number, r: number, most: number): 0 | 1 | 2 {
  const { boundary } = shape;
  let first = -1;
  let firstValue = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < boundary.length; i += EDGE_ROW) {
    const value = edgePlane(boundary, i, x, r, most);
    if (value > firstValue) {
      firstValue = value;
      first = i;
    }
  }
  if (first < 0) return 0;
  insidePlanes[0] = firstValue;
  insidePlanes[1] = boundary[first + 3]!;
  insidePlanes[2] = -boundary[first + 2]!;
  let second = -1;
  let secondValue = 0;
  let secondScore = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < boundary.length; i += EDGE_ROW) {
    const value = edgePlane(boundary, i, x, r, most);
    // Opposed edges count more: they stop the fall on the far side of the ridge.
    const alike = insidePlanes[1] * boundary[i + 3]! - insidePlanes[2] * boundary[i + 2]!;
    const score = value + most * (1 - alike);
    if (i !== first && score > secondScore) {
      secondScore = score;
      secondValue = value;
      second = i;
    }
  }
  if (second < 0 || secondValue === Number.NEGATIVE_INFINITY) return 1;
  insidePlanes[3] = secondValue;
  insidePlanes[4] = boundary[second + 3]!;
  insidePlanes[5] = -boundary[second + 2]!;
  return 2;
}

/** Signed distance to an edge's line where its foot stays on the edge within `most`; else −Infinity. */
function edgePlane(edges: Float64Array, i: number, x: number, r: number, most: number): number {
  const dx = x - edges[i]!;
  const dr = r - edges[i + 1]!;
  const along = dx * edges[i + 2]! + dr * edges[i + 3]!;
  const off = dx * edges[i + 3]! - dr * edges[i + 2]!;
  return along >= most && along <= edges[i + 4]! - most && off <= -most ? off : Number.NEGATIVE_INFINITY;
}
