import { MOTION } from "../geometry/motionRow.ts";
import { CELL, cellCenterTo, cellDescent, cellReach } from "./cells.ts";
import { insidePlanes, probeInside, probeRing, type RingProbe, ringProbe } from "./ring/ringProbe.ts";
import type { RingShape } from "./ring/ringShape.ts";

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

// Leaf scratch of `boundCell`: the point being looked at, in the wheel's meridian frame, and what may move.
const probe: RingProbe = ringProbe();
/** Wheel axis (0–2), radial direction at the point (3–5), point from the wheel center (6–8), point (9–11). */
const view = new Float64Array(12);
let radius = 0;
let reach = 0;
let most = 0;
let offset = 0;
let armMost = 0;
let steerMost = 0;
let spin = 0;
let partShare = 0;
let armShare = 0;
let steerShare = 0;

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
  lookFrom(out.center, wheel, wheelAt, cells, at);
  probeRing(probe, shape, view[6]! * view[0]! + view[7]! * view[1]! + view[8]! * view[2]!, radius);
  const partRadius = cells[at + CELL.radius]!;
  out.distance = probe.distance;
  out.value = probe.distance - partRadius;
  for (let i = 0; i < 3; i++) out.away[i] = probe.gradientX * view[i]! + probe.gradientR * view[3 + i]!;

  reach = cellReach(cells, at, view[9]!, view[10]!, view[11]!);
  let armPath = 0;
  let steerPath = 0;
  if (motion !== null) {
    offset = Math.sqrt(view[6]! * view[6]! + view[7]! * view[7]! + view[8]! * view[8]!);
    armMost = speedMost(motion, MOTION.armTurn, MOTION.armTurnOff);
    steerMost = speedMost(motion, MOTION.steerTurn, MOTION.steerTurnOff);
    armPath = motion[MOTION.armHalf]! * armMost;
    steerPath = motion[MOTION.steerHalf]! * steerMost;
    spin =
      motion[MOTION.armHalf]! * motion[MOTION.armTurnMost]! +
      motion[MOTION.steerHalf]! * motion[MOTION.steerTurnMost]!;
  }
  most = reach + armPath + steerPath;

  // The 1-Lipschitz bound holds everywhere.
  out.bound = probe.distance - most;
  out.partShare = reach;
  out.armShare = armPath;
  out.steerShare = steerPath;
  if (!clearOfPieces(out, shape, cells, at, motion)) boundInside(out, shape, cells, at, motion);
  out.bound -= partRadius;
}

/** Fills `view` and `radius` for the cell's center. */
function lookFrom(
  center: Float64Array,
  wheel: Float64Array,
  wheelAt: number,
  cells: Float64Array,
  at: number,
): void {
  cellCenterTo(center, cells, at);
  const nx = wheel[wheelAt + 3]!;
  const ny = wheel[wheelAt + 4]!;
  const nz = wheel[wheelAt + 5]!;
  const dx = center[0]! - wheel[wheelAt]!;
  const dy = center[1]! - wheel[wheelAt + 1]!;
  const dz = center[2]! - wheel[wheelAt + 2]!;
  const x = dx * nx + dy * ny + dz * nz;
  let ex = dx - x * nx;
  let ey = dy - x * ny;
  let ez = dz - x * nz;
  radius = Math.sqrt(ex * ex + ey * ey + ez * ez);
  if (radius > 0) {
    ex /= radius;
    ey /= radius;
    ez /= radius;
  } else {
    // On the axis every radial direction is as good: take one across the axis.
    const level = Math.sqrt(ny * ny + nz * nz);
    ex = 0;
    ey = level > 0 ? -nz / level : 1;
    ez = level > 0 ? ny / level : 0;
  }
  view[0] = nx;
  view[1] = ny;
  view[2] = nz;
  view[3] = ex;
  view[4] = ey;
  view[5] = ez;
  view[6] = dx;
  view[7] = dy;
  view[8] = dz;
  view[9] = center[0]!;
  view[10] = center[1]!;
  view[11] = center[2]!;
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
  for (let k = 0; k < count; k++) {
    const d = probe.pieces[3 * k]!;
    if (d - most >= outside) continue;
    const ur = probe.pieces[3 * k + 2]!;
    const bound = slopeBound(d, probe.pieces[3 * k + 1]!, ur, ur < 0 ? ur : 0, cells, at, motion);
    if (bound >= outside) continue;
    outside = bound;
    if (!(outside > 0)) return false;
    part = partShare;
    arm = armShare;
    steer = steerShare;
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
  if (!(probe.distance + most < 0)) return;
  const x = view[6]! * view[0]! + view[7]! * view[1]! + view[8]! * view[2]!;
  const planes = probeInside(shape, x, radius, most);
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
  out.partShare = partShare;
  out.armShare = armShare;
  out.steerShare = steerShare;
}

/**
 * d plus the least change along direction (ux, ur) over the cell and the poses; the shares of that change
 * are left in scratch. `down` is the part of ur toward the axis (all of it, or what a mean of planes hides).
 */
function slopeBound(
  d: number,
  ux: number,
  ur: number,
  down: number,
  cells: Float64Array,
  at: number,
  motion: Float64Array | null,
): number {
  const gx = ux * view[0]! + ur * view[3]!;
  const gy = ux * view[1]! + ur * view[4]!;
  const gz = ux * view[2]! + ur * view[5]!;
  partShare = -cellDescent(cells, at, view[9]!, view[10]!, view[11]!, gx, gy, gz);
  armShare = 0;
  steerShare = 0;
  let sag = 0;
  if (down < 0) {
    if (!(most < radius)) return d - most;
    sag = (-down * most * most) / (2 * (radius - most));
  }
  if (motion !== null) {
    armShare =
      motion[MOTION.armHalf]! *
      (speedAlong(motion, MOTION.armTurn, gx, gy, gz) +
        motion[MOTION.armSlideOff]! +
        motion[MOTION.armTurnOff]! * offset +
        motion[MOTION.armTurnMost]! * reach +
        spin * armMost);
    steerShare =
      motion[MOTION.steerHalf]! *
      (speedAlong(motion, MOTION.steerTurn, gx, gy, gz) +
        motion[MOTION.steerSlideOff]! +
        motion[MOTION.steerTurnOff]! * offset +
        motion[MOTION.steerTurnMost]! * reach +
        spin * steerMost);
  }
  return d - partShare - armShare - steerShare - sag;
}

/** |g·(v + ω × d)| at the middle pose. */
function speedAlong(motion: Float64Array, turnAt: number, gx: number, gy: number, gz: number): number {
  const wx = motion[turnAt]!;
  const wy = motion[turnAt + 1]!;
  const wz = motion[turnAt + 2]!;
  const dx = view[6]!;
  const dy = view[7]!;
  const dz = view[8]!;
  return Math.abs(
    gx * (motion[turnAt + 3]! + wy * dz - wz * dy) +
      gy * (motion[turnAt + 4]! + wz * dx - wx * dz) +
      gz * (motion[turnAt + 5]! + wx * dy - wy * dx),
  );
}

/** Upper bound of |v + ω × d| over the cell of poses and the extent of the part. */
function speedMost(motion: Float64Array, turnAt: number, offAt: number): number {
  const wx = motion[turnAt]!;
  const wy = motion[turnAt + 1]!;
  const wz = motion[turnAt + 2]!;
  const dx = view[6]!;
  const dy = view[7]!;
  const dz = view[8]!;
  const x = motion[turnAt + 3]! + wy * dz - wz * dy;
  const y = motion[turnAt + 4]! + wz * dx - wx * dz;
  const z = motion[turnAt + 5]! + wx * dy - wy * dx;
  return (
    Math.sqrt(x * x + y * y + z * z) +
    motion[offAt + 1]! +
    motion[offAt]! * offset +
    motion[offAt + 2]! * reach
  );
}
