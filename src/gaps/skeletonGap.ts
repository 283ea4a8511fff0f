import { GAP } from "./gapRow.ts";
import { crownReach, crownView, lookAtCrown } from "./ring/crown.ts";
import { probeRing, ringProbe } from "./ring/ringProbe.ts";
import type { RingShape } from "./ring/ringShape.ts";
import { FACE, FACE_ROW, type Skeleton } from "./skeleton.ts";

/** The nearest place so far: point, unit direction away from the ring, its x and r, the crown's edge number; the
 * direction of the part's edge that it lies on, all zero at a corner. */
const PLACE = { point: 0, away: 3, x: 6, r: 7, edge: 8, along: 9 } as const;

/** mm. Edges are searched to this, by the tangents at both ends of what is left. */
const EDGE_TOLERANCE = 1e-8;
/** mm. Less than this a first-order fall over a whole box is rounding. */
const LEVEL = 1e-7;
const MOST_STEPS = 60;

/** A corner seen from the wheel, in this order: x, r, place across the axis (3), distance, direction along x and r,
 * the crown's edge there. */
const SEEN_ROW = 9;

// Leaf scratch.
let seen = new Float64Array(64 * SEEN_ROW);
const place = new Float64Array(12);
const probe = ringProbe();
const spot = new Float64Array(2);
/** Wheel center and unit axis. */
const view = new Float64Array(6);
/** Least distance so far, and the distance from which on nothing matters. Numbers in a row: a `let` would be boxed. */
const level = new Float64Array(2);
const BEST = 0;
const LIMIT = 1;

/** Cells of the part that `skeletonGapTo` could not settle, and how many. */
export const unsettled = { cells: new Int32Array(64), count: 0 };

/**
 * Gap between the ring and a part by its skeleton, exact, as far as convexity settles it: the distance to the
 * crown (the ring filled in, see `ring/crown.ts`) is convex, so along an edge one local minimum is the minimum, and
 * a solid's nearest place is one from which the distance falls toward none of its corners. The crown holds the ring, so no gap
 * is less; where the nearest place of the crown is a place of the ring, the gap is that distance.
 * Fills `out` as `GAP` says; cells left to search are in `unsettled`.
 *
 * @returns the gap (of what is settled), `beat` when none is below it, or NaN when nothing is settled: a part in
 * the hole of the barrel, or pressed deep. `out` is then left alone.
 */
export function skeletonGapTo(
  out: Float64Array,
  at: number,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  part: Skeleton,
  beat: number,
): number {
  for (let i = 0; i < 6; i++) view[i] = wheel[wheelAt + i]!;
  const limit = beat + part.radius;
  level[BEST] = Number.POSITIVE_INFINITY;
  level[LIMIT] = limit;
  unsettled.count = 0;
  seeCorners(shape, part);
  searchEdges(shape, part);
  if (part.solid) {
    if (!settleSolid(shape, part)) return Number.NaN;
  } else if (part.faces.length > 0) settleSheet(shape, part);
  const best = level[BEST];
  if (!(best < limit)) return beat;
  if (!isRealPlace(shape)) return Number.NaN;
  for (let i = 0; i < 3; i++) {
    out[at + GAP.point + i] = place[i]! - part.radius * place[3 + i]!;
    out[at + GAP.onRing + i] = place[i]! - best * place[3 + i]!;
  }
  out[at] = best - part.radius;
  return best - part.radius;
}

/** Looks at every corner; the nearest is the first guess. */
function seeCorners(shape: RingShape, part: Skeleton): void {
  const { corners } = part;
  const count = corners.length / 3;
  if (seen.length < count * SEEN_ROW) seen = new Float64Array(2 * count * SEEN_ROW);
  const cx = view[0]!;
  const cy = view[1]!;
  const cz = view[2]!;
  const nx = view[3]!;
  const ny = view[4]!;
  const nz = view[5]!;
  const rows = seen;
  let best = level[BEST]!;
  let start = shape.crown.count >> 1;
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
    lookAtCrown(shape.crown, spot, start);
    const d = crownView[4]!;
    start = crownView[3]!;
    const row = i * SEEN_ROW;
    rows[row] = x;
    rows[row + 1] = r;
    rows[row + 2] = ax;
    rows[row + 3] = ay;
    rows[row + 4] = az;
    rows[row + 5] = d;
    rows[row + 6] = crownView[0]!;
    rows[row + 7] = crownView[1]!;
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

/** The place across the axis tells where around the ring; `crownView` is of that place. */
function keep(d: number, x: number, r: number, ax: number, ay: number, az: number): void {
  level[BEST] = d;
  const cx = view[0]!;
  const cy = view[1]!;
  const cz = view[2]!;
  const nx = view[3]!;
  const ny = view[4]!;
  const nz = view[5]!;
  const ux = crownView[0]!;
  const share = r > 0 ? crownView[1]! / r : 0;
  place[0] = cx + x * nx + ax;
  place[1] = cy + x * ny + ay;
  place[2] = cz + x * nz + az;
  place[3] = ux * nx + share * ax;
  place[4] = ux * ny + share * ay;
  place[5] = ux * nz + share * az;
  place[PLACE.x] = x;
  place[PLACE.r] = r;
  place[PLACE.edge] = crownView[2]!;
}

/** Least distance along each edge whose distance falls from both ends, by Newton's steps kept in a bracket. */
function searchEdges(shape: RingShape, part: Skeleton): void {
  const { edges } = part;
  const rows = seen;
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
    const most = level[BEST]! < level[LIMIT]! ? level[BEST]! : level[LIMIT]!;
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
  const rows = seen;
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
  let best = level[BEST]!;
  const limit = level[LIMIT]!;
  let start = rows[a + 8]!;
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = xa + t * dx;
    let rSq = squareA + t * (2 * acrossA + t * acrossSq);
    if (rSq < 1e-18) rSq = 1e-18;
    const r = Math.sqrt(rSq);
    spot[0] = x;
    spot[1] = r;
    lookAtCrown(shape.crown, spot, start);
    const d = crownView[4]!;
    start = crownView[3]!;
    const ux = crownView[0]!;
    const ur = crownView[1]!;
    const rise = (acrossA + t * acrossSq) / r;
    const fall = ux * dx + ur * rise;
    if (d < best) {
      best = d;
      keep(d, x, r, rows[a + 2]! + t * wx, rows[a + 3]! + t * wy, rows[a + 4]! + t * wz);
      place[PLACE.along] = dx * view[3]! + wx;
      place[PLACE.along + 1] = dx * view[4]! + wy;
      place[PLACE.along + 2] = dx * view[5]! + wz;
    }
    let curve = (ur * (acrossSq - rise * rise)) / r;
    if (crownView[2]! < 0) curve += (dx * dx + rise * rise - fall * fall) / d;
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

/**
 * Least change of the distance, to first order, from the place found to any corner. At the lowest place along an
 * edge the slope along it is zero; what the search left of it is taken off.
 */
function leastFall(part: Skeleton): number {
  const { corners } = part;
  const ax = place[PLACE.along]!;
  const ay = place[PLACE.along + 1]!;
  const az = place[PLACE.along + 2]!;
  const sq = ax * ax + ay * ay + az * az;
  const left = sq > 0 ? (ax * place[3]! + ay * place[4]! + az * place[5]!) / sq : 0;
  const gx = place[3]! - left * ax;
  const gy = place[4]! - left * ay;
  const gz = place[5]! - left * az;
  let least = 0;
  for (let i = 0; i < corners.length; i += 3) {
    const change =
      (corners[i]! - place[0]!) * gx +
      (corners[i + 1]! - place[1]!) * gy +
      (corners[i + 2]! - place[2]!) * gz;
    if (change < least) least = change;
  }
  return least;
}

/**
 * A solid is convex: a place from which the distance falls toward no corner is its nearest. Else the nearest place
 * lies in a face, under the crown's farthest point toward it, and that face's plane parts solid and crown.
 * @returns false when neither holds: they overlap.
 */
function settleSolid(shape: RingShape, part: Skeleton): boolean {
  const { faces } = part;
  const fall = leastFall(part);
  const best = level[BEST]!;
  const limit = level[LIMIT]!;
  if (fall >= -LEVEL || best + fall >= limit) return true;
  const most = best < limit ? best : limit;
  for (let at = 0; at < faces.length; at += FACE_ROW) {
    const d = faceGap(shape, faces, at, 1);
    if (d >= most) return true;
    if (d > 0 && standsOnFace(faces, at, 1)) {
      keepFace(faces, at, 1, d);
      return true;
    }
  }
  return false;
}

/** Faces of a sheet one by one: ruled out, settled by the crown's point above it, or left to the caller. */
function settleSheet(shape: RingShape, part: Skeleton): void {
  const { faces } = part;
  for (let at = 0; at < faces.length; at += FACE_ROW) {
    const most = level[BEST]! < level[LIMIT]! ? level[BEST]! : level[LIMIT]!;
    const above = faceGap(shape, faces, at, 1);
    if (above >= most) continue;
    if (above > 0) {
      if (standsOnFace(faces, at, 1)) keepFace(faces, at, 1, above);
      continue;
    }
    const below = faceGap(shape, faces, at, -1);
    if (below >= most) continue;
    if (below > 0) {
      if (standsOnFace(faces, at, -1)) keepFace(faces, at, -1, below);
      continue;
    }
    if (faceFloor(faces, at) >= most) continue;
    if (unsettled.count === unsettled.cells.length) {
      const more = new Int32Array(2 * unsettled.count);
      more.set(unsettled.cells);
      unsettled.cells = more;
    }
    unsettled.cells[unsettled.count++] = faces[at + FACE.cell]!;
  }
}

/** The face's corners give a floor each, to first order: the highest of the three counts. */
function faceFloor(faces: Float64Array, at: number): number {
  const rows = seen;
  let floor = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < 3; i++) {
    const a = faces[at + FACE.corners + i]! * SEEN_ROW;
    const share = rows[a + 1]! > 0 ? rows[a + 7]! / rows[a + 1]! : 0;
    let least = 0;
    for (let j = 0; j < 3; j++) {
      const b = faces[at + FACE.corners + j]! * SEEN_ROW;
      const change =
        rows[a + 6]! * (rows[b]! - rows[a]!) +
        share *
          (rows[a + 2]! * (rows[b + 2]! - rows[a + 2]!) +
            rows[a + 3]! * (rows[b + 3]! - rows[a + 3]!) +
            rows[a + 4]! * (rows[b + 4]! - rows[a + 4]!));
      if (change < least) least = change;
    }
    if (rows[a + 5]! + least > floor) floor = rows[a + 5]! + least;
  }
  return floor;
}

/** How far the crown stays above a face's plane (`way` 1, or below it, −1); its nearest corner in `crownView`. */
function faceGap(shape: RingShape, faces: Float64Array, at: number, way: number): number {
  const mx = way * faces[at]!;
  const my = way * faces[at + 1]!;
  const mz = way * faces[at + 2]!;
  const nx = view[3]!;
  const ny = view[4]!;
  const nz = view[5]!;
  const along = mx * nx + my * ny + mz * nz;
  const acrossSq = 1 - along * along;
  return (
    mx * view[0]! +
    my * view[1]! +
    mz * view[2]! -
    crownReach(shape.crown, -along, acrossSq > 0 ? Math.sqrt(acrossSq) : 0) -
    way * faces[at + FACE.offset]!
  );
}

/** Whether the crown's nearest point to the face's plane (corner in `crownView`) stands on the face itself. */
function standsOnFace(faces: Float64Array, at: number, way: number): boolean {
  faceFoot(faces, at, way);
  for (let plane = at + FACE.sides; plane < at + FACE.cell; plane += 4) {
    const out =
      faces[plane]! * foot[0]! +
      faces[plane + 1]! * foot[1]! +
      faces[plane + 2]! * foot[2]! -
      faces[plane + 3]!;
    if (out > 0) return false;
  }
  return true;
}

const foot = new Float64Array(3);

/** That point, moved onto the plane, in `foot`. */
function faceFoot(faces: Float64Array, at: number, way: number): void {
  const mx = way * faces[at]!;
  const my = way * faces[at + 1]!;
  const mz = way * faces[at + 2]!;
  const nx = view[3]!;
  const ny = view[4]!;
  const nz = view[5]!;
  const along = mx * nx + my * ny + mz * nz;
  const across = Math.sqrt(Math.max(0, 1 - along * along));
  const x = crownView[0]!;
  const share = across > 0 ? crownView[1]! / across : 0;
  const px = view[0]! + x * nx - share * (mx - along * nx);
  const py = view[1]! + x * ny - share * (my - along * ny);
  const pz = view[2]! + x * nz - share * (mz - along * nz);
  const d = mx * px + my * py + mz * pz - way * faces[at + FACE.offset]!;
  foot[0] = px - d * mx;
  foot[1] = py - d * my;
  foot[2] = pz - d * mz;
}

/** The direction away from the ring is against the face's normal on that side. */
function keepFace(faces: Float64Array, at: number, way: number, d: number): void {
  if (!(d < level[BEST]!)) return;
  level[BEST] = d;
  for (let i = 0; i < 3; i++) {
    place[i] = foot[i]!;
    place[3 + i] = -way * faces[at + i]!;
  }
  place[PLACE.edge] = -1;
}

/** Whether the place found is nearest to a place of the ring itself, not to what the crown fills in. */
function isRealPlace(shape: RingShape): boolean {
  const edge = place[PLACE.edge]!;
  const best = level[BEST]!;
  if (best > 0) return edge < 0 || shape.crown.real[edge] === 1;
  probeRing(probe, shape, place[PLACE.x]!, place[PLACE.r]!);
  return Math.abs(probe.distance - best) <= EDGE_TOLERANCE;
}
