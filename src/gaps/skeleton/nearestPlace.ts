import { hullProfileView } from "../ring/hullProfile.ts";

/**
 * The nearest place found so far: point of the skeleton, unit direction away from the ring, its x and r, the
 * hull profile's edge number; the direction of the part's edge that it lies on, all zero at a corner; its distance, and the
 * distance from which on nothing matters. One row for all: a `let` would be boxed.
 */
export const PLACE = { point: 0, away: 3, x: 6, r: 7, edge: 8, along: 9, best: 12, limit: 13 } as const;
export const place = new Float64Array(14);

/** Center and unit axis of the wheel that is looked from. */
export const wheelSeen = new Float64Array(6);

/** mm. Edges are searched to this, by the tangents at both ends of what is left. */
export const EDGE_TOLERANCE = 1e-8;

/** The place across the axis tells where around the ring; `hullProfileView` is of that place. */
export function keep(d: number, x: number, r: number, ax: number, ay: number, az: number): void {
  place[PLACE.best] = d;
  const cx = wheelSeen[0]!;
  const cy = wheelSeen[1]!;
  const cz = wheelSeen[2]!;
  const nx = wheelSeen[3]!;
  const ny = wheelSeen[4]!;
  const nz = wheelSeen[5]!;
  const ux = hullProfileView[0]!;
  const share = r > 0 ? hullProfileView[1]! / r : 0;
  place[0] = cx + x * nx + ax;
  place[1] = cy + x * ny + ay;
  place[2] = cz + x * nz + az;
  place[3] = ux * nx + share * ax;
  place[4] = ux * ny + share * ay;
  place[5] = ux * nz + share * az;
  place[PLACE.x] = x;
  place[PLACE.r] = r;
  place[PLACE.edge] = hullProfileView[2]!;
}
