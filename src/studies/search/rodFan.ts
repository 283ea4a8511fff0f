import { probeRing, type RingProbe, ringProbe } from "../../gaps/ring/ringProbe.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { MOTION } from "../../geometry/motionRow.ts";

/** What `boundFan` found; memory the caller owns. */
export interface FanBound {
  /** Signed distance of the piece's nearer end at the middle pose, less the rod's radius, mm. */
  value: number;
  /** No point of the piece at any pose of the cell has less; −Infinity where it may enter the solid. */
  bound: number;
  /** How much of the looseness comes from the piece's length, the arm's range, the steering's range. */
  partShare: number;
  armShare: number;
  steerShare: number;
  /** How long the piece is, and how far the two inputs may move any point of it, mm. */
  length: number;
  armPath: number;
  steerPath: number;
}

export function fanBound(): FanBound {
  return {
    value: 0,
    bound: 0,
    partShare: 0,
    armShare: 0,
    steerShare: 0,
    length: 0,
    armPath: 0,
    steerPath: 0,
  };
}

// Leaf scratch: the solid from the nearer end; what length, arm and steering take off the least bound.
const probe: RingProbe = ringProbe();
const share = new Float64Array(3);

/**
 * Bounds the gap of a piece of a rod over a cell of poses where `boundCell` is loose: near the outer end K, which
 * no pose moves. From the piece's nearer end q₀, fraction `near`, the rods of all poses fan out, and the point at
 * s lies at q₀ + (s − near)·(B − K) + s·ΔB as seen from the wheel. With u the direction of a convex piece's
 * distance at q₀ its change is at least (s − near)·u·(B − K) − s·M − sag, M the most of −u·ΔB; sag is the
 * concavity of r where u points toward the axis, D²/2(r − D) with D = (s − near)·|B − K| + s·|ΔB|, convex in s. So
 * the whole is concave in s and least at one of the piece's ends: a rod that leaves K away from the ring at every
 * pose of the cell is settled at K itself. The least over the solid's convex pieces counts while it is above 0.
 *
 * @param pose wheel center and axis at `wheelAt`. @param outer, inner K and B, three numbers at each place.
 * @param motion of B, as `rodMotionTo` fills it.
 */
export function boundFan(
  out: FanBound,
  shape: RingShape,
  pose: Float64Array,
  wheelAt: number,
  outer: ArrayLike<number>,
  outerAt: number,
  inner: ArrayLike<number>,
  innerAt: number,
  near: number,
  far: number,
  radius: number,
  motion: Float64Array,
): void {
  const bx = inner[innerAt]! - outer[outerAt]!;
  const by = inner[innerAt + 1]! - outer[outerAt + 1]!;
  const bz = inner[innerAt + 2]! - outer[outerAt + 2]!;
  const long = Math.sqrt(bx * bx + by * by + bz * bz);
  const nx = pose[wheelAt + 3]!;
  const ny = pose[wheelAt + 4]!;
  const nz = pose[wheelAt + 5]!;
  const dx = outer[outerAt]! + near * bx - pose[wheelAt]!;
  const dy = outer[outerAt + 1]! + near * by - pose[wheelAt + 1]!;
  const dz = outer[outerAt + 2]! + near * bz - pose[wheelAt + 2]!;
  const x = dx * nx + dy * ny + dz * nz;
  const ex = dx - x * nx;
  const ey = dy - x * ny;
  const ez = dz - x * nz;
  const r = Math.sqrt(ex * ex + ey * ey + ez * ez);
  probeRing(probe, shape, x, r);
  out.value = probe.distance - radius;
  const armPath = motion[MOTION.armHalf]! * speedMost(motion, MOTION.armTurn + 3, MOTION.armSlideOff);
  const steerPath = motion[MOTION.steerHalf]! * speedMost(motion, MOTION.steerTurn + 3, MOTION.steerSlideOff);
  const path = armPath + steerPath;
  const most = (far - near) * long + far * path;

  let least = Number.POSITIVE_INFINITY;
  const count = shape.pieceStarts.length - 1;
  for (let k = 0; k < count; k++) {
    const d = probe.pieces[3 * k]!;
    if (d - most >= least) continue;
    const ux = probe.pieces[3 * k + 1]!;
    const ur = probe.pieces[3 * k + 2]!;
    const across = r > 0 ? ur / r : 0;
    const gx = ux * nx + across * ex;
    const gy = ux * ny + across * ey;
    const gz = ux * nz + across * ez;
    const slope = gx * bx + gy * by + gz * bz;
    const arm =
      motion[MOTION.armHalf]! * speedAlong(motion, MOTION.armTurn + 3, MOTION.armSlideOff, gx, gy, gz);
    const steer =
      motion[MOTION.steerHalf]! * speedAlong(motion, MOTION.steerTurn + 3, MOTION.steerSlideOff, gx, gy, gz);
    // On the axis every direction across it is as good, so there only the piece along it counts.
    const down = r > 0 ? (ur < 0 ? -ur : 0) : 1;
    const atNear = -near * (arm + steer) - sagOf(down, near * path, r);
    const atFar = (far - near) * slope - far * (arm + steer) - sagOf(down, most, r);
    const bound = d + Math.max(Math.min(atNear, atFar), -most);
    if (bound >= least) continue;
    least = bound;
    const at = atNear < atFar ? near : far;
    share[0] = Math.max(0, -(at - near) * slope);
    share[1] = at * arm;
    share[2] = at * steer;
  }
  out.bound = least > 0 ? least - radius : Number.NEGATIVE_INFINITY;
  out.partShare = share[0]!;
  out.armShare = share[1]!;
  out.steerShare = share[2]!;
  out.length = (far - near) * long;
  out.armPath = far * armPath;
  out.steerPath = far * steerPath;
}

/** How far r may fall below its linearization over a move of `move`; Infinity when it may reach the axis. */
function sagOf(down: number, move: number, r: number): number {
  if (down === 0) return 0;
  return move < r ? (down * move * move) / (2 * (r - move)) : move === 0 ? 0 : Number.POSITIVE_INFINITY;
}

function speedMost(motion: Float64Array, slideAt: number, offAt: number): number {
  const x = motion[slideAt]!;
  const y = motion[slideAt + 1]!;
  const z = motion[slideAt + 2]!;
  return Math.sqrt(x * x + y * y + z * z) + motion[offAt]!;
}

function speedAlong(
  motion: Float64Array,
  slideAt: number,
  offAt: number,
  gx: number,
  gy: number,
  gz: number,
): number {
  const along = gx * motion[slideAt]! + gy * motion[slideAt + 1]! + gz * motion[slideAt + 2]!;
  return Math.abs(along) + motion[offAt]!;
}
