import { hullProfileView, lookAtHullProfile } from "../ring/hullProfile.ts";
import type { RingShape } from "../ring/ringShape.ts";
import { EDGE_TOLERANCE, keep, PLACE, place, wheelSeen } from "./nearestPlace.ts";
import type { Skeleton } from "./skeleton.ts";

/** A corner seen from the wheel, in this order: x, r, place across the axis (3), distance, direction along x and r,
 * the hull profile's edge there. */
export const SEEN_ROW = 9;
/** Every corner of the skeleton looked at last. */
export const seen = { rows: new Float64Array(64 * SEEN_ROW) };

const MOST_STEPS = 60;
const spot = new Float64Array(2);

/** Looks at every corner; the nearest is the first guess. */
export function seeCorners(shape: RingShape, part: Skeleton): void {
  const { corners } = part;
  const count = corners.length / 3;
  if (seen.rows.length < count * SEEN_ROW) seen.rows = new Float64Array(2 * count * SEEN_ROW);
  const cx = wheelSeen[0]!;
  const cy = wheelSeen[1]!;
  const cz = wheelSeen[2]!;
  const nx = wheelSeen[3]!;
  const ny = wheelSeen[4]!;
  const nz = wheelSeen[5]!;
  const { rows } = seen;
  let best = place[PLACE.best]!;
  let start = shape.hullProfile.count >> 1;
  for (let i = 0; i < count; i++) {
    const dx = corners[3 * i]! - cx;
    const dy = corners[3 * i + 1]! - cy;
    const dz = corners[3 * i + 2]! - cz;
    const x = dx * nx + dy * ny + dz * nz;
    const ax = dx - x * nx;
    const ay = dy - x * ny;
    const az = dz - x * nz;
    const r = Math.sqrt(ax * ax + ay * ay + az * az);
    spot[0] = x;
    spot[1] = r;
    lookAtHullProfile(shape.hullProfile, spot, start);
    const d = hullProfileView[4]!;
    start = hullProfileView[3]!;
    const row = i * SEEN_ROW;
    rows[row] = x;
    rows[row + 1] = r;
    rows[row + 2] = ax;
    rows[row + 3] = ay;
    rows[row + 4] = az;
    rows[row + 5] = d;
    rows[row + 6] = hullProfileView[0]!;
    rows[row + 7] = hullProfileView[1]!;
    rows[row + 8] = start;
    if (d < best) {
      best = d;
      keep(d, x, r, ax, ay, az);
    }
  }
  place[PLACE.along] = 0;
  place[PLACE.along + 1] = 0;
  place[PLACE.along + 2] = 0;
}

/** Least distance along each edge whose distance falls from both ends, by Newton's steps kept in a bracket. */
export function searchEdges(shape: RingShape, part: Skeleton): void {
  const { edges } = part;
  const { rows } = seen;
  for (let i = 0; i < edges.length; i += 2) {
    const a = edges[i]! * SEEN_ROW;
    const b = edges[i + 1]! * SEEN_ROW;
    const dx = rows[b]! - rows[a]!;
    const wx = rows[b + 2]! - rows[a + 2]!;
    const wy = rows[b + 3]! - rows[a + 3]!;
    const wz = rows[b + 4]! - rows[a + 4]!;
    const acrossA = rows[a + 2]! * wx + rows[a + 3]! * wy + rows[a + 4]! * wz;
    const acrossB = rows[b + 2]! * wx + rows[b + 3]! * wy + rows[b + 4]! * wz;
    const ra = rows[a + 1]!;
    const rb = rows[b + 1]!;
    const fallA = rows[a + 6]! * dx + (ra > 0 ? (rows[a + 7]! * acrossA) / ra : 0);
    const fallB = rows[b + 6]! * dx + (rb > 0 ? (rows[b + 7]! * acrossB) / rb : 0);
    if (!(fallA < 0) || !(fallB > 0)) continue;
    const da = rows[a + 5]!;
    const db = rows[b + 5]!;
    // Both tangents lie below the distance; where they cross is the least it could be.
    const cross = (db - da - fallB) / (fallA - fallB);
    const most = place[PLACE.best]! < place[PLACE.limit]! ? place[PLACE.best]! : place[PLACE.limit]!;
    if (!(da + fallA * cross < most - EDGE_TOLERANCE)) continue;
    run[0] = dx;
    run[1] = wx;
    run[2] = wy;
    run[3] = wz;
    run[4] = acrossA;
    run[5] = fallA;
    run[6] = fallB;
    run[7] = cross;
    searchEdge(shape, a, b);
  }
}

/** An edge to search: its run along x and across (3), corner a across its run, the slopes at both ends, where to begin. */
const run = new Float64Array(8);

/** One edge from the corner seen in row `a` to that in row `b`; its parameter goes from 0 to 1. */
function searchEdge(shape: RingShape, a: number, b: number): void {
  const dx = run[0]!;
  const wx = run[1]!;
  const wy = run[2]!;
  const wz = run[3]!;
  const acrossA = run[4]!;
  const { rows } = seen;
  const xa = rows[a]!;
  const squareA = rows[a + 1]! * rows[a + 1]!;
  const acrossSq = wx * wx + wy * wy + wz * wz;
  let low = 0;
  let high = 1;
  let dLow = rows[a + 5]!;
  let fallLow = run[5]!;
  let dHigh = rows[b + 5]!;
  let fallHigh = run[6]!;
  let t = run[7]!;
  let best = place[PLACE.best]!;
  const limit = place[PLACE.limit]!;
  let start = rows[a + 8]!;
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = xa + t * dx;
    let rSq = squareA + t * (2 * acrossA + t * acrossSq);
    if (rSq < 1e-18) rSq = 1e-18;
    const r = Math.sqrt(rSq);
    spot[0] = x;
    spot[1] = r;
    lookAtHullProfile(shape.hullProfile, spot, start);
    const d = hullProfileView[4]!;
    start = hullProfileView[3]!;
    const ux = hullProfileView[0]!;
    const ur = hullProfileView[1]!;
    const rise = (acrossA + t * acrossSq) / r;
    const fall = ux * dx + ur * rise;
    if (d < best) {
      best = d;
      keep(d, x, r, rows[a + 2]! + t * wx, rows[a + 3]! + t * wy, rows[a + 4]! + t * wz);
      place[PLACE.along] = dx * wheelSeen[3]! + wx;
      place[PLACE.along + 1] = dx * wheelSeen[4]! + wy;
      place[PLACE.along + 2] = dx * wheelSeen[5]! + wz;
    }
    let curve = (ur * (acrossSq - rise * rise)) / r;
    if (hullProfileView[2]! < 0) curve += (dx * dx + rise * rise - fall * fall) / d;
    if (fall < 0) {
      low = t;
      dLow = d;
      fallLow = fall;
    } else {
      high = t;
      dHigh = d;
      fallHigh = fall;
    }
    // The tangents' crossing bounds what is left.
    const width = high - low;
    const along = (dHigh - dLow - fallHigh * width) / (fallLow - fallHigh);
    if (!(dLow + fallLow * along < (best < limit ? best : limit) - EDGE_TOLERANCE)) return;
    const newton = t - fall / curve;
    // A kink or a straight run: the crossing itself, and the middle when neither gets on.
    t = newton > low && newton < high ? newton : step % 3 === 2 ? low + 0.5 * width : low + along;
    if (!(t > low && t < high)) return;
  }
}
