import { hullProfileView, hullReach } from "../ring/hullProfile.ts";
import type { RingShape } from "../ring/ringShape.ts";
import { SEEN_ROW, seen } from "./cornersAndEdges.ts";
import { PLACE, place, wheelSeen } from "./nearestPlace.ts";
import { FACE, FACE_ROW, type Skeleton } from "./skeleton.ts";

/** mm. Less than this a first-order fall over a whole box is rounding. */
const LEVEL = 1e-7;

/** mm per mm. More slope than this along an edge at the lowest place found there is no leftover of the search. */
const LEFTOVER = 1e-4;

/** Cells of the part that `skeletonGapTo` could not settle, and how many. */
export const unsettled = { cells: new Int32Array(64), count: 0 };

/**
 * Least change of the distance, to first order, from the place found to any corner. At the lowest place along an
 * edge the slope along it is zero; what the search left of it is taken off. Inside the hull profile the distance has ridges,
 * and the lowest place may stand on one, where the slopes to either side are not zero and neither alone bounds what
 * lies across: then nothing is known here.
 */
function leastFall(part: Skeleton): number {
  const { corners } = part;
  const ax = place[PLACE.along]!;
  const ay = place[PLACE.along + 1]!;
  const az = place[PLACE.along + 2]!;
  const sq = ax * ax + ay * ay + az * az;
  const left = sq > 0 ? (ax * place[3]! + ay * place[4]! + az * place[5]!) / sq : 0;
  if (place[PLACE.best]! < 0 && Math.abs(left) * Math.sqrt(sq) > LEFTOVER) return Number.NEGATIVE_INFINITY;
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
 * lies in a face, under the hull profile's farthest point toward it, and that face's plane parts solid and hull profile.
 * @returns false when neither holds: they overlap.
 */
export function settleSolid(shape: RingShape, part: Skeleton): boolean {
  const { faces } = part;
  const fall = leastFall(part);
  const best = place[PLACE.best]!;
  const limit = place[PLACE.limit]!;
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

/** Faces of a sheet one by one: ruled out, settled by the hull profile's point above it, or left to the caller. */
export function settleSheet(shape: RingShape, part: Skeleton): void {
  const { faces } = part;
  for (let at = 0; at < faces.length; at += FACE_ROW) {
    const most = place[PLACE.best]! < place[PLACE.limit]! ? place[PLACE.best]! : place[PLACE.limit]!;
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
  const { rows } = seen;
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

/** How far the hull profile stays above a face's plane (`way` 1, or below it, −1); its nearest corner in `hullProfileView`. */
function faceGap(shape: RingShape, faces: Float64Array, at: number, way: number): number {
  const mx = way * faces[at]!;
  const my = way * faces[at + 1]!;
  const mz = way * faces[at + 2]!;
  const nx = wheelSeen[3]!;
  const ny = wheelSeen[4]!;
  const nz = wheelSeen[5]!;
  const along = mx * nx + my * ny + mz * nz;
  const acrossSq = 1 - along * along;
  return (
    mx * wheelSeen[0]! +
    my * wheelSeen[1]! +
    mz * wheelSeen[2]! -
    hullReach(shape.hullProfile, -along, acrossSq > 0 ? Math.sqrt(acrossSq) : 0) -
    way * faces[at + FACE.offset]!
  );
}

/** Whether the hull profile's nearest point to the face's plane (corner in `hullProfileView`) stands on the face itself. */
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
  const nx = wheelSeen[3]!;
  const ny = wheelSeen[4]!;
  const nz = wheelSeen[5]!;
  const along = mx * nx + my * ny + mz * nz;
  const across = Math.sqrt(Math.max(0, 1 - along * along));
  const x = hullProfileView[0]!;
  const share = across > 0 ? hullProfileView[1]! / across : 0;
  const px = wheelSeen[0]! + x * nx - share * (mx - along * nx);
  const py = wheelSeen[1]! + x * ny - share * (my - along * ny);
  const pz = wheelSeen[2]! + x * nz - share * (mz - along * nz);
  const d = mx * px + my * py + mz * pz - way * faces[at + FACE.offset]!;
  foot[0] = px - d * mx;
  foot[1] = py - d * my;
  foot[2] = pz - d * mz;
}

/** The direction away from the ring is against the face's normal on that side. */
function keepFace(faces: Float64Array, at: number, way: number, d: number): void {
  if (!(d < place[PLACE.best]!)) return;
  place[PLACE.best] = d;
  for (let i = 0; i < 3; i++) {
    place[i] = foot[i]!;
    place[3 + i] = -way * faces[at + i]!;
  }
  place[PLACE.edge] = -1;
}
