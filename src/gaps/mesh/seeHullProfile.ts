import { type HullProfile, hullProfileView, lookAtHullProfile } from "../ring/hullProfile.ts";

/**
 * A point seen from the wheel: x, y, z; signed distance to the hull profile; its slope there (x, y, z); the nearest edge of
 * the hull profile, −1 where it is a corner; the edge to begin the next look with.
 */
export const SEEN = { point: 0, distance: 3, slope: 4, edge: 7, start: 8 } as const;
export const SEEN_ROW = 9;

// Leaf scratch.
const spot = new Float64Array(2);

/**
 * Looks at the hull profile from a point (three numbers at `pointAt`, left-hand frame) and fills a `SEEN` row. The distance
 * to the hull profile is convex and never more than that to the ring; the slope is a subgradient of it in space:
 * distance(q) ≥ distance + slope·(q − point) for every q.
 * @param start edge to begin with: any will do, one near by is quick.
 */
export function seeHullProfile(
  out: Float64Array,
  at: number,
  hullProfile: HullProfile,
  wheel: Float64Array,
  wheelAt: number,
  points: Float64Array,
  pointAt: number,
  start: number,
): void {
  const nx = wheel[wheelAt + 3]!;
  const ny = wheel[wheelAt + 4]!;
  const nz = wheel[wheelAt + 5]!;
  const px = points[pointAt]!;
  const py = points[pointAt + 1]!;
  const pz = points[pointAt + 2]!;
  const dx = px - wheel[wheelAt]!;
  const dy = py - wheel[wheelAt + 1]!;
  const dz = pz - wheel[wheelAt + 2]!;
  const x = dx * nx + dy * ny + dz * nz;
  const ax = dx - x * nx;
  const ay = dy - x * ny;
  const az = dz - x * nz;
  const r = Math.sqrt(ax * ax + ay * ay + az * az);
  spot[0] = x;
  spot[1] = r;
  lookAtHullProfile(hullProfile, spot, start);
  const ux = hullProfileView[0]!;
  // On the axis no direction across it is special: a slope along the axis alone is a subgradient there.
  const share = r > 0 ? hullProfileView[1]! / r : 0;
  out[at] = px;
  out[at + 1] = py;
  out[at + 2] = pz;
  out[at + SEEN.distance] = hullProfileView[4]!;
  out[at + SEEN.slope] = ux * nx + share * ax;
  out[at + SEEN.slope + 1] = ux * ny + share * ay;
  out[at + SEEN.slope + 2] = ux * nz + share * az;
  out[at + SEEN.edge] = hullProfileView[2]!;
  out[at + SEEN.start] = hullProfileView[3]!;
}
