import { type HullProfile, hullProfileView, hullReach } from "../ring/hullProfile.ts";
import { SEEN, SEEN_ROW, seeHullProfile } from "./seeHullProfile.ts";
import { TRIANGLE_ROW } from "./triangleTree.ts";

/** mm. An edge is searched until no more than this can be gained. */
const EDGE_TOLERANCE = 1e-8;
const MOST_STEPS = 60;

// Leaf scratch: the three corners, then the point being looked at.
const corners = new Float64Array(3 * SEEN_ROW);
const point = new Float64Array(SEEN_ROW);
const work = new Float64Array(TRIANGLE_ROW);

/**
 * Least distance of a triangle to the hull profile, if below `beat`, with its place as a `SEEN` row. The distance is convex,
 * so its least over the triangle is on an edge, where the slope along it turns, or inside, where the hull profile's farthest
 * point toward the triangle's plane stands above it. Exact to 1e-8 mm.
 * @returns the distance, `beat` when none is below it, or −Infinity where it may be 0 or less: in the hull profile the
 * distance has kinks within the triangle too.
 */
export function triangleOnHullProfile(
  place: Float64Array,
  hullProfile: HullProfile,
  wheel: Float64Array,
  wheelAt: number,
  triangles: Float64Array,
  at: number,
  beat: number,
  start: number,
): number {
  const t = work;
  for (let i = 0; i < TRIANGLE_ROW; i++) t[i] = triangles[at + i]!;
  const c = corners;
  seeHullProfile(c, 0, hullProfile, wheel, wheelAt, t, 0, start);
  const da = c[SEEN.distance]!;
  const toB = slopeTo(0, t[3]!, t[4]!, t[5]!);
  const toC = slopeTo(0, t[6]!, t[7]!, t[8]!);
  const fall = toB < toC ? toB : toC;
  if (!(da + (fall < 0 ? fall : 0) < beat)) return beat;
  if (!(beat > 0)) return Number.NEGATIVE_INFINITY;
  const near = c[SEEN.start]!;
  seeHullProfile(c, SEEN_ROW, hullProfile, wheel, wheelAt, t, 3, near);
  seeHullProfile(c, 2 * SEEN_ROW, hullProfile, wheel, wheelAt, t, 6, near);
  let best = beat;
  for (let row = 0; row < 3 * SEEN_ROW; row += SEEN_ROW)
    if (c[row + SEEN.distance]! < best) best = keep(place, c, row);
  if (!(best > 0)) return Number.NEGATIVE_INFINITY;
  best = searchEdge(place, hullProfile, wheel, wheelAt, 0, SEEN_ROW, best);
  best = searchEdge(place, hullProfile, wheel, wheelAt, SEEN_ROW, 2 * SEEN_ROW, best);
  best = searchEdge(place, hullProfile, wheel, wheelAt, 2 * SEEN_ROW, 0, best);
  return best > 0 ? searchFace(place, hullProfile, wheel, wheelAt, best) : Number.NEGATIVE_INFINITY;
}

/** Change of the distance, to first order, from the corner in row `from` to a point. */
function slopeTo(from: number, x: number, y: number, z: number): number {
  const c = corners;
  return (
    c[from + 4]! * (x - c[from]!) + c[from + 5]! * (y - c[from + 1]!) + c[from + 6]! * (z - c[from + 2]!)
  );
}

function keep(place: Float64Array, row: Float64Array, at: number): number {
  for (let i = 0; i < SEEN_ROW; i++) place[i] = row[at + i]!;
  return row[at + SEEN.distance]!;
}

/** Least distance on the edge between the corners in rows a and b, if below `beat`. */
function searchEdge(
  place: Float64Array,
  hullProfile: HullProfile,
  wheel: Float64Array,
  wheelAt: number,
  a: number,
  b: number,
  beat: number,
): number {
  const c = corners;
  const ax = c[a]!;
  const ay = c[a + 1]!;
  const az = c[a + 2]!;
  const ex = c[b]! - ax;
  const ey = c[b + 1]! - ay;
  const ez = c[b + 2]! - az;
  let low = 0;
  let high = 1;
  let dLow = c[a + 3]!;
  let dHigh = c[b + 3]!;
  let fallLow = c[a + 4]! * ex + c[a + 5]! * ey + c[a + 6]! * ez;
  let fallHigh = c[b + 4]! * ex + c[b + 5]! * ey + c[b + 6]! * ez;
  if (!(fallLow < 0) || !(fallHigh > 0)) return beat;
  let best = beat;
  let start = c[a + 8]!;
  for (let step = 0; step < MOST_STEPS; step++) {
    const width = high - low;
    // Both tangents lie below the distance; where they cross is the least it could be.
    const cross = (dHigh - dLow - fallHigh * width) / (fallLow - fallHigh);
    if (!(dLow + fallLow * cross < best - EDGE_TOLERANCE)) return best;
    // Where the slope turns, if it grows evenly; at a kink the crossing itself; the middle when neither gets on.
    const way = step % 3;
    const along = way === 0 ? (width * fallLow) / (fallLow - fallHigh) : way === 1 ? cross : 0.5 * width;
    const s = low + along;
    if (!(s > low && s < high)) {
      if (way === 2) return best;
      continue;
    }
    point[0] = ax + s * ex;
    point[1] = ay + s * ey;
    point[2] = az + s * ez;
    seeHullProfile(point, 0, hullProfile, wheel, wheelAt, point, 0, start);
    const d = point[SEEN.distance]!;
    start = point[SEEN.start]!;
    if (d < best) {
      best = keep(place, point, 0);
      if (!(best > 0)) return best;
    }
    const fall = point[4]! * ex + point[5]! * ey + point[6]! * ez;
    if (fall < 0) {
      low = s;
      dLow = d;
      fallLow = fall;
    } else {
      high = s;
      dHigh = d;
      fallHigh = fall;
    }
  }
  return best;
}

/** Distance of the triangle's plane, if below `beat` and the hull profile's point nearest to it stands over the triangle. */
function searchFace(
  place: Float64Array,
  hullProfile: HullProfile,
  wheel: Float64Array,
  wheelAt: number,
  beat: number,
): number {
  const t = work;
  const abx = t[3]! - t[0]!;
  const aby = t[4]! - t[1]!;
  const abz = t[5]! - t[2]!;
  const acx = t[6]! - t[0]!;
  const acy = t[7]! - t[1]!;
  const acz = t[8]! - t[2]!;
  let nx = aby * acz - abz * acy;
  let ny = abz * acx - abx * acz;
  let nz = abx * acy - aby * acx;
  const area = Math.sqrt(nx * nx + ny * ny + nz * nz);
  if (!(area > 0)) return beat;
  const toPlane =
    (nx * (t[0]! - wheel[wheelAt]!) +
      ny * (t[1]! - wheel[wheelAt + 1]!) +
      nz * (t[2]! - wheel[wheelAt + 2]!)) /
    area;
  // Turned to point from the wheel to the plane. A plane through the wheel center cuts the hull profile.
  const turn = (toPlane < 0 ? -1 : 1) / area;
  nx *= turn;
  ny *= turn;
  nz *= turn;
  const wx = wheel[wheelAt + 3]!;
  const wy = wheel[wheelAt + 4]!;
  const wz = wheel[wheelAt + 5]!;
  const along = nx * wx + ny * wy + nz * wz;
  let ex = nx - along * wx;
  let ey = ny - along * wy;
  let ez = nz - along * wz;
  const across = Math.sqrt(ex * ex + ey * ey + ez * ez);
  const d = Math.abs(toPlane) - hullReach(hullProfile, along, across);
  if (!(d > 0 && d < beat)) return beat;
  const cornerX = hullProfileView[0]!;
  const cornerR = across > 0 ? hullProfileView[1]! / across : 0;
  ex = wheel[wheelAt]! + cornerX * wx + cornerR * ex;
  ey = wheel[wheelAt + 1]! + cornerX * wy + cornerR * ey;
  ez = wheel[wheelAt + 2]! + cornerX * wz + cornerR * ez;
  const px = ex + d * nx;
  const py = ey + d * ny;
  const pz = ez + d * nz;
  if (!isOver(px - t[0]!, py - t[1]!, pz - t[2]!, abx, aby, abz, acx, acy, acz)) return beat;
  place[0] = px;
  place[1] = py;
  place[2] = pz;
  place[3] = d;
  place[4] = nx;
  place[5] = ny;
  place[6] = nz;
  // A corner of the hull profile is a corner of the section.
  place[7] = -1;
  place[8] = corners[8]!;
  return d;
}

/** Whether a point of the plane, from corner A, lies in the triangle with those sides from A. */
function isOver(
  px: number,
  py: number,
  pz: number,
  abx: number,
  aby: number,
  abz: number,
  acx: number,
  acy: number,
  acz: number,
): boolean {
  const bb = abx * abx + aby * aby + abz * abz;
  const cc = acx * acx + acy * acy + acz * acz;
  const bc = abx * acx + aby * acy + abz * acz;
  const pb = px * abx + py * aby + pz * abz;
  const pc = px * acx + py * acy + pz * acz;
  const whole = bb * cc - bc * bc;
  const v = pb * cc - pc * bc;
  const w = pc * bb - pb * bc;
  return v >= 0 && w >= 0 && v + w <= whole;
}
