import { hullProfileView, lookAtHullProfile } from "../ring/hullProfile.ts";
import { insidePlanes, probeInside, probeRing, type RingProbe, ringProbe } from "../ring/ringProbe.ts";
import type { RingShape } from "../ring/ringShape.ts";
import { CELL } from "./cells.ts";
import { lookFrom, slopeBound, VIEW, view } from "./cellView.ts";

/** What `boundCell` found; memory the caller owns. */
export interface CellBound {
  /** Signed distance from the cell's center to the ring at the middle pose, less the part's radius, mm. */
  value: number;
  /** No point of the cell at any pose of the range has less. */
  bound: number;
  /** The center and the unit direction away from the ring there. */
  readonly center: Float64Array;
  readonly away: Float64Array;
  /** Signed distance of the center itself. */
  distance: number;
  /** How much of value − bound comes from the part's extent, the arm's range, the steering's range. */
  partShare: number;
  armShare: number;
  steerShare: number;
}

export function cellBound(): CellBound {
  return {
    value: 0,
    bound: 0,
    center: new Float64Array(3),
    away: new Float64Array(3),
    distance: 0,
    partShare: 0,
    armShare: 0,
    steerShare: 0,
  };
}

// Leaf scratch of `boundCell`.
const probe: RingProbe = ringProbe();
const spot = new Float64Array(2);

/**
 * Bounds the gap between the ring and every point of a cell over a range of poses. Proof (see
 * `public/docs/certified-gaps.md`): let q be a point's place in the wheel's frame, d the signed distance to a
 * convex set. For q₀ at the middle and u the direction of d there, d(q) ≥ d(q₀) + u·(q − q₀). Within the
 * cell q − q₀ is the part's extent plus the wheel's own motion, each bounded to first order with its
 * deviation. Where u points toward the axis, r is concave, not convex, across u; the sagitta D²/2(r − D)
 * is taken off. Signed distance is also 1-Lipschitz, which gives the second bound; the better one counts.
 * Outside the ring the least over its convex pieces bounds it; where the cell may enter the ring, its
 * convex hull does, and deep inside it the planes of its edges.
 *
 * @param wheel wheel center and unit outboard axis at the middle pose, three and three numbers at `wheelAt`.
 * @param motion a row laid out as `MOTION`, or null for one pose.
 */
export function boundCell(
  out: CellBound,
  shape: RingShape,
  wheel: Float64Array,
  wheelAt: number,
  cells: Float64Array,
  at: number,
  motion: Float64Array | null,
): void {
  lookFrom(out.center, wheel, wheelAt, cells, at, motion);
  const partRadius = cells[at + CELL.radius]!;
  const { hullProfile } = shape;
  spot[0] = view[VIEW.x]!;
  spot[1] = view[VIEW.r]!;
  lookAtHullProfile(hullProfile, spot, hullProfile.count >> 1);
  const d = hullProfileView[4]!;
  const edge = hullProfileView[2]!;
  // The hull profile is convex in space: where the center's distance is the hull profile's, its plane is all that is needed.
  if (d > 0 && (edge < 0 || hullProfile.real[edge] === 1)) {
    const ux = hullProfileView[0]!;
    const ur = hullProfileView[1]!;
    see(out, d, ux, ur, partRadius);
    keepBetter(out, slopeBound(d, ux, ur, 0, cells, at, motion));
    out.bound -= partRadius;
    return;
  }
  probeRing(probe, shape, view[VIEW.x]!, view[VIEW.r]!);
  see(out, probe.distance, probe.gradientX, probe.gradientR, partRadius);
  if (!clearOfPieces(out, shape, cells, at, motion)) boundInside(out, shape, cells, at, motion);
  out.bound -= partRadius;
}

/** What is known of the center alone, with the 1-Lipschitz bound, which holds everywhere. */
function see(out: CellBound, d: number, ux: number, ur: number, partRadius: number): void {
  out.distance = d;
  out.value = d - partRadius;
  for (let i = 0; i < 3; i++) out.away[i] = ux * view[i]! + ur * view[3 + i]!;
  out.bound = d - view[VIEW.most]!;
  out.partShare = view[VIEW.reach]!;
  out.armShare = view[VIEW.armPath]!;
  out.steerShare = view[VIEW.steerPath]!;
}

/** Bounds a cell that is proven to stay outside the ring by its nearest convex piece; false when it may not. */
function clearOfPieces(
  out: CellBound,
  shape: RingShape,
  cells: Float64Array,
  at: number,
  motion: Float64Array | null,
): boolean {
  let outside = Number.POSITIVE_INFINITY;
  let part = 0;
  let arm = 0;
  let steer = 0;
  const count = shape.pieceStarts.length - 1;
  const most = view[VIEW.most]!;
  for (let k = 0; k < count; k++) {
    const d = probe.pieces[3 * k]!;
    if (d - most >= outside) continue;
    const ur = probe.pieces[3 * k + 2]!;
    const bound = slopeBound(d, probe.pieces[3 * k + 1]!, ur, ur < 0 ? ur : 0, cells, at, motion);
    if (bound >= outside) continue;
    outside = bound;
    if (!(outside > 0)) return false;
    part = view[VIEW.partShare]!;
    arm = view[VIEW.armShare]!;
    steer = view[VIEW.steerShare]!;
  }
  if (outside > out.bound) {
    out.bound = outside;
    out.partShare = part;
    out.armShare = arm;
    out.steerShare = steer;
  }
  return true;
}

/** Bounds a cell that may enter the ring: by the convex hull, and deep inside by the planes of its edges. */
function boundInside(
  out: CellBound,
  shape: RingShape,
  cells: Float64Array,
  at: number,
  motion: Float64Array | null,
): void {
  const hullR = probe.hullGradientR;
  keepBetter(
    out,
    slopeBound(probe.hullDistance, probe.hullGradientX, hullR, hullR < 0 ? hullR : 0, cells, at, motion),
  );
  const most = view[VIEW.most]!;
  if (!(probe.distance + most < 0)) return;
  const planes = probeInside(shape, view[VIEW.x]!, view[VIEW.r]!, most);
  if (planes === 0) return;
  const d1 = insidePlanes[0]!;
  const x1 = insidePlanes[1]!;
  const r1 = insidePlanes[2]!;
  keepBetter(out, slopeBound(d1, x1, r1, r1 < 0 ? r1 : 0, cells, at, motion));
  if (planes === 1) return;
  const d2 = insidePlanes[3]!;
  const x2 = insidePlanes[4]!;
  const r2 = insidePlanes[5]!;
  // A mean of two planes, weighted so that it is as level as can be, bounds the greater of them.
  const sq = (x2 - x1) * (x2 - x1) + (r2 - r1) * (r2 - r1);
  const share = sq > 0 ? (x2 * (x2 - x1) + r2 * (r2 - r1)) / sq : 1;
  const first = share < 0 ? 0 : share > 1 ? 1 : share;
  const rest = 1 - first;
  const down = (r1 < 0 ? r1 * first : 0) + (r2 < 0 ? r2 * rest : 0);
  keepBetter(
    out,
    slopeBound(
      first * d1 + rest * d2,
      first * x1 + rest * x2,
      first * r1 + rest * r2,
      down,
      cells,
      at,
      motion,
    ),
  );
}

function keepBetter(out: CellBound, bound: number): void {
  if (!(bound > out.bound)) return;
  out.bound = bound;
  out.partShare = view[VIEW.partShare]!;
  out.armShare = view[VIEW.armShare]!;
  out.steerShare = view[VIEW.steerShare]!;
}
