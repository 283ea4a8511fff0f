import { EDGE_ROW } from "./convexPieces.ts";

/**
 * The ring with its middle filled in to the axis, seen from outside: the convex hull's outline from its
 * outermost point over the tread to its innermost, both ends running straight down. It holds the ring, and it is
 * convex in space, so the distance to it is a convex function of the point everywhere: one local minimum over a
 * segment or a face is the minimum. Wherever its nearest place is a place of the ring, both distances agree.
 */
export interface HullProfile {
  /** Edge rows as in `RingShape`, counterclockwise; the first comes up from far below, the last goes down. */
  readonly edges: Float64Array;
  readonly count: number;
  /** 1 for each edge that is an edge of the section itself; its corners always are. */
  readonly real: Uint8Array;
}

/** mm. How far the two ends run down: past the axis for any ring, little enough to keep the digits. */
const FAR_DOWN = 65_536;

/** @param hull, boundary edge rows of the section's convex hull and of the section, counterclockwise. */
export function hullProfileOf(hull: Float64Array, boundary: Float64Array): HullProfile {
  const count = hull.length / EDGE_ROW;
  const row = (i: number) => [...hull.subarray((i % count) * EDGE_ROW, (i % count) * EDGE_ROW + EDGE_ROW)];
  // Counterclockwise, the chain over the tread runs from the greatest x to the least: nothing in it goes toward +x.
  let start = 0;
  for (let i = 0; i < count; i++) if (row(i)[2]! <= 0 && row(i + count - 1)[2]! > 0) start = i;
  const rows: number[][] = [];
  for (let i = start; row(i)[2]! <= 0; i++) rows.push(row(i));
  const [firstX, firstR] = rows[0] as [number, number];
  const [x, r, ex, er, length] = rows.at(-1) as [number, number, number, number, number];
  const edges = [
    [firstX, firstR - FAR_DOWN, 0, 1, FAR_DOWN],
    ...rows,
    [x + length * ex, r + length * er, 0, -1, FAR_DOWN],
  ];
  return {
    edges: Float64Array.from(edges.flat()),
    count: edges.length,
    real: Uint8Array.from(edges, (edge) => (isEdgeOf(boundary, edge) ? 1 : 0)),
  };
}

function isEdgeOf(boundary: Float64Array, edge: readonly number[]): boolean {
  for (let at = 0; at < boundary.length; at += EDGE_ROW) {
    if (edge.every((v, i) => v === boundary[at + i])) return true;
  }
  return false;
}

/**
 * What `lookAtHullProfile` saw: unit direction away along x and along r (≥ 0); the nearest edge's number, or −1 where the
 * nearest place is a corner; the number of an edge there, to begin the next look with; signed distance, mm.
 */
export const hullProfileView = new Float64Array(5);

/**
 * Signed distance from (x, r) of the meridian plane to the hull profile, exact; fills `hullProfileView`. Walks from one edge to
 * the next until the foot lies on an edge or between two: for a convex outline that is the nearest place.
 * The point comes in `spot` (x, r): numbers handed over in a row are not boxed, and this is the innermost call.
 * @param start the edge to begin with: any will do, one near by is quick.
 */
export function lookAtHullProfile(hullProfile: HullProfile, spot: Float64Array, start: number): void {
  const { edges, count } = hullProfile;
  const view = hullProfileView;
  const x = spot[0]!;
  const r = spot[1]!;
  let i = start;
  for (let step = 0; step < count; step++) {
    const at = i * EDGE_ROW;
    const dx = x - edges[at]!;
    const dr = r - edges[at + 1]!;
    const ex = edges[at + 2]!;
    const er = edges[at + 3]!;
    const along = dx * ex + dr * er;
    if (along < 0) {
      if (i === 0) break;
      const before = at - EDGE_ROW;
      const end = (x - edges[before]!) * edges[before + 2]! + (r - edges[before + 1]!) * edges[before + 3]!;
      if (end <= edges[before + 4]!) {
        i--;
        continue;
      }
      const d = Math.sqrt(dx * dx + dr * dr);
      view[0] = dx / d;
      view[1] = dr / d;
      view[2] = -1;
      view[3] = i;
      view[4] = d;
      return;
    }
    const length = edges[at + 4]!;
    if (along > length) {
      if (i === count - 1) break;
      const after = at + EDGE_ROW;
      const qx = x - edges[after]!;
      const qr = r - edges[after + 1]!;
      if (qx * edges[after + 2]! + qr * edges[after + 3]! >= 0) {
        i++;
        continue;
      }
      const d = Math.sqrt(qx * qx + qr * qr);
      view[0] = qx / d;
      view[1] = qr / d;
      view[2] = -1;
      view[3] = i;
      view[4] = d;
      return;
    }
    const off = dx * er - dr * ex;
    if (!(off > 0)) break;
    view[0] = er;
    view[1] = -ex;
    view[2] = i;
    view[3] = i;
    view[4] = off;
    return;
  }
  lookAtAll(hullProfile, x, r);
}

/** Inside: the greatest of the distances to the edges' lines. Outside, where the walk met no end: all edges. */
function lookAtAll({ edges, count }: HullProfile, x: number, r: number): void {
  const view = hullProfileView;
  let most = Number.NEGATIVE_INFINITY;
  let leastSq = Number.POSITIVE_INFINITY;
  let nearest = 0;
  for (let at = 0; at < count * EDGE_ROW; at += EDGE_ROW) {
    const dx = x - edges[at]!;
    const dr = r - edges[at + 1]!;
    const ex = edges[at + 2]!;
    const er = edges[at + 3]!;
    const off = dx * er - dr * ex;
    if (off > most) {
      most = off;
      if (!(most > 0)) {
        view[0] = er;
        view[1] = -ex;
        nearest = at / EDGE_ROW;
      }
    }
    if (!(off > 0)) continue;
    const length = edges[at + 4]!;
    const foot = dx * ex + dr * er;
    const along = foot < 0 ? 0 : foot > length ? length : foot;
    const qx = dx - along * ex;
    const qr = dr - along * er;
    const sq = qx * qx + qr * qr;
    if (sq >= leastSq) continue;
    leastSq = sq;
    nearest = along === foot ? at / EDGE_ROW : -1;
    view[0] = qx;
    view[1] = qr;
  }
  view[2] = nearest;
  view[3] = nearest < 0 ? count >> 1 : nearest;
  view[4] = most;
  if (!(most > 0)) return;
  const d = Math.sqrt(leastSq);
  view[4] = d;
  view[0] = view[0]! / d;
  view[1] = view[1]! / d;
}

/** How far the hull profile reaches in the unit direction (ux, ur ≥ 0) of the meridian plane, mm; its corner in `hullProfileView`. */
export function hullReach({ edges, count }: HullProfile, ux: number, ur: number): number {
  let most = Number.NEGATIVE_INFINITY;
  // Corners: the starts of all edges but the first.
  for (let at = EDGE_ROW; at < count * EDGE_ROW; at += EDGE_ROW) {
    const reach = ux * edges[at]! + ur * edges[at + 1]!;
    if (reach > most) {
      most = reach;
      hullProfileView[0] = edges[at]!;
      hullProfileView[1] = edges[at + 1]!;
    }
  }
  return most;
}
