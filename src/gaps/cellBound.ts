import { CELL, cellCenterTo, cellDescent, cellReach } from "./cells.ts";
import { insidePlanes, probeInside, probeRing, type RingProbe, ringProbe } from "./ring/ringProbe.ts";
import type { RingShape } from "./ring/ringShape.ts";

/**
 * How the wheel may move within a cell of poses about that cell's middle pose (left-hand frame, mm, rad).
 * Two inputs, `arm` and `steer`, each with its half range h, the wheel's velocity per unit of input at
 * the middle (turn ω, slide v at the wheel center's middle place), and by how much these can differ
 * anywhere in the cell. All zero: one pose.
 */
export const MOTION = {
  armHalf: 0,
  steerHalf: 1,
  armTurn: 2,
  armSlide: 5,
  steerTurn: 8,
  steerSlide: 11,
  /** |ω − ω at the middle|, |v − v at the middle|, |ω|: upper bounds over the cell. */
  armTurnOff: 14,
  armSlideOff: 15,
  armTurnMost: 16,
  steerTurnOff: 17,
  steerSlideOff: 18,
  steerTurnMost: 19,
} as const;

export const MOTION_ROW = 20;

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

// Leaf scratch; `boundCell` calls back nobody.
const probe: RingProbe = ringProbe();
const slope = { partShare: 0, armShare: 0, steerShare: 0 };

/**
 * Bounds the gap between the ring and every point of a cell over a range of poses. Proof (see
 * `docs/certified-gaps.md`): let q be a point's place in the wheel's frame, d the signed distance to a
 * convex set. For q₀ at the middle and u the direction of d there, d(q) ≥ d(q₀) + u·(q − q₀). Within the
 * cell q − q₀ is the part's extent plus the wheel's own motion, each bounded to first order with its
 * deviation. Where u points toward the axis, r is concave, not convex, across u; the sagitta D²/2(r − D)
 * is taken off. Signed distance is also 1-Lipschitz, which gives the second bound; the better one counts.
 * Outside the ring the least over its convex pieces bounds it; where the cell may enter the ring, its
 * convex hull does.
 *
 * @param center, axis wheel center and unit outboard axis at the middle pose, `at` an offset into `wheel`
 * (three and three numbers).
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
  cellCenterTo(out.center, cells, at);
  const mx = out.center[0]!;
  const my = out.center[1]!;
  const mz = out.center[2]!;
  const nx = wheel[wheelAt + 3]!;
  const ny = wheel[wheelAt + 4]!;
  const nz = wheel[wheelAt + 5]!;
  const dx = mx - wheel[wheelAt]!;
  const dy = my - wheel[wheelAt + 1]!;
  const dz = mz - wheel[wheelAt + 2]!;
  const x = dx * nx + dy * ny + dz * nz;
  let ex = dx - x * nx;
  let ey = dy - x * ny;
  let ez = dz - x * nz;
  const r = Math.sqrt(ex * ex + ey * ey + ez * ez);
  if (r > 0) {
    ex /= r;
    ey /= r;
    ez /= r;
  } else {
    // On the axis every radial direction is as good: take one across the axis.
    const side = Math.abs(nx) < 0.5 ? 1 / Math.sqrt(ny * ny + nz * nz) : 0;
    ex = 0;
    ey = side > 0 ? -nz * side : 0;
    ez = side > 0 ? ny * side : 1;
  }
  probeRing(probe, shape, x, r);
  out.distance = probe.distance;
  out.value = probe.distance - cells[at + CELL.radius]!;
  out.away[0] = probe.gradientX * nx + probe.gradientR * ex;
  out.away[1] = probe.gradientX * ny + probe.gradientR * ey;
  out.away[2] = probe.gradientX * nz + probe.gradientR * ez;

  const reach = cellReach(cells, at, mx, my, mz);
  let armMost = 0;
  let steerMost = 0;
  let spin = 0;
  if (motion !== null) {
    armMost = speedMost(motion, MOTION.armTurn, MOTION.armTurnOff, dx, dy, dz, reach);
    steerMost = speedMost(motion, MOTION.steerTurn, MOTION.steerTurnOff, dx, dy, dz, reach);
    spin =
      motion[MOTION.armHalf]! * motion[MOTION.armTurnMost]! +
      motion[MOTION.steerHalf]! * motion[MOTION.steerTurnMost]!;
  }
  const armPath = motion === null ? 0 : motion[MOTION.armHalf]! * armMost;
  const steerPath = motion === null ? 0 : motion[MOTION.steerHalf]! * steerMost;
  const most = reach + armPath + steerPath;

  // The 1-Lipschitz bound holds everywhere.
  out.bound = probe.distance - most;
  out.partShare = reach;
  out.armShare = armPath;
  out.steerShare = steerPath;

  const offset = Math.sqrt(dx * dx + dy * dy + dz * dz);
  let outside = Number.POSITIVE_INFINITY;
  let outsidePart = 0;
  let outsideArm = 0;
  let outsideSteer = 0;
  const count = shape.pieceStarts.length - 1;
  for (let k = 0; k < count; k++) {
    const d = probe.pieces[3 * k]!;
    if (d - most >= outside) continue;
    const bound = slopeBound(d, probe.pieces[3 * k + 1]!, probe.pieces[3 * k + 2]!);
    if (bound < outside) {
      outside = bound;
      outsidePart = slope.partShare;
      outsideArm = slope.armShare;
      outsideSteer = slope.steerShare;
    }
  }
  if (outside > 0) {
    // Proven clear of the ring, so the pieces' bound holds.
    if (outside > out.bound) {
      out.bound = outside;
      out.partShare = outsidePart;
      out.armShare = outsideArm;
      out.steerShare = outsideSteer;
    }
  } else {
    keepBetter(slopeBound(probe.hullDistance, probe.hullGradientX, probe.hullGradientR));
    const planes = probe.distance + most < 0 ? probeInside(shape, x, r, most) : 0;
    if (planes > 0) keepBetter(slopeBound(insidePlanes[0]!, insidePlanes[1]!, insidePlanes[2]!));
    if (planes > 1) {
      // The mean of two planes, weighted so that it is as level as can be, bounds their greater one.
      const levelX = insidePlanes[4]! - insidePlanes[1]!;
      const levelR = insidePlanes[5]! - insidePlanes[2]!;
      const sq = levelX * levelX + levelR * levelR;
      const share = sq > 0 ? (insidePlanes[4]! * levelX + insidePlanes[5]! * levelR) / sq : 1;
      const first = share < 0 ? 0 : share > 1 ? 1 : share;
      const rest = 1 - first;
      const down = Math.min(0, insidePlanes[2]!) * first + Math.min(0, insidePlanes[5]!) * rest;
      keepBetter(
        slopeBound(
          first * insidePlanes[0]! + rest * insidePlanes[3]!,
          first * insidePlanes[1]! + rest * insidePlanes[4]!,
          first * insidePlanes[2]! + rest * insidePlanes[5]!,
          down,
        ),
      );
    }
  }
  out.bound -= cells[at + CELL.radius]!;

  function keepBetter(bound: number): void {
    if (!(bound > out.bound)) return;
    out.bound = bound;
    out.partShare = slope.partShare;
    out.armShare = slope.armShare;
    out.steerShare = slope.steerShare;
  }

  /**
   * d plus the least change along direction (ux, ur) over the cell; shares of that change in `slope`.
   * `down` is the part of ur that points toward the axis (all of it, or what a mean of planes hides).
   */
  function slopeBound(d: number, ux: number, ur: number, down = ur < 0 ? ur : 0): number {
    const gx = ux * nx + ur * ex;
    const gy = ux * ny + ur * ey;
    const gz = ux * nz + ur * ez;
    slope.partShare = -cellDescent(cells, at, mx, my, mz, gx, gy, gz);
    slope.armShare = 0;
    slope.steerShare = 0;
    let sag = 0;
    if (down < 0) {
      if (most < r) sag = (-down * most * most) / (2 * (r - most));
      else return d - most;
    }
    if (motion !== null) {
      slope.armShare =
        motion[MOTION.armHalf]! *
        (speedAlong(motion, MOTION.armTurn, dx, dy, dz, gx, gy, gz) +
          motion[MOTION.armSlideOff]! +
          motion[MOTION.armTurnOff]! * offset +
          motion[MOTION.armTurnMost]! * reach +
          spin * armMost);
      slope.steerShare =
        motion[MOTION.steerHalf]! *
        (speedAlong(motion, MOTION.steerTurn, dx, dy, dz, gx, gy, gz) +
          motion[MOTION.steerSlideOff]! +
          motion[MOTION.steerTurnOff]! * offset +
          motion[MOTION.steerTurnMost]! * reach +
          spin * steerMost);
    }
    return d - slope.partShare - slope.armShare - slope.steerShare - sag;
  }
}

/** |g·(v + ω × d)| at the middle pose. */
function speedAlong(
  motion: Float64Array,
  turnAt: number,
  dx: number,
  dy: number,
  dz: number,
  gx: number,
  gy: number,
  gz: number,
): number {
  const wx = motion[turnAt]!;
  const wy = motion[turnAt + 1]!;
  const wz = motion[turnAt + 2]!;
  return Math.abs(
    gx * (motion[turnAt + 3]! + wy * dz - wz * dy) +
      gy * (motion[turnAt + 4]! + wz * dx - wx * dz) +
      gz * (motion[turnAt + 5]! + wx * dy - wy * dx),
  );
}

/** Upper bound of |v + ω × d| over the cell of poses and the extent of the part. */
function speedMost(
  motion: Float64Array,
  turnAt: number,
  offAt: number,
  dx: number,
  dy: number,
  dz: number,
  reach: number,
): number {
  const wx = motion[turnAt]!;
  const wy = motion[turnAt + 1]!;
  const wz = motion[turnAt + 2]!;
  const x = motion[turnAt + 3]! + wy * dz - wz * dy;
  const y = motion[turnAt + 4]! + wz * dx - wx * dz;
  const z = motion[turnAt + 5]! + wx * dy - wy * dx;
  return (
    Math.sqrt(x * x + y * y + z * z) +
    motion[offAt + 1]! +
    motion[offAt]! * Math.sqrt(dx * dx + dy * dy + dz * dz) +
    motion[offAt + 2]! * reach
  );
}
