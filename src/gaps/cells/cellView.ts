import { MOTION } from "../../geometry/motionRow.ts";
import { cellCenterTo, cellDescent, cellReach } from "./cells.ts";

/** What a cell looks like from the wheel, and how far anything in it may move: one row, since a `let` would be boxed. */
export const VIEW = {
  /** Wheel axis, radial direction at the cell's center, center from the wheel center, center. */
  axis: 0,
  radial: 3,
  offset: 6,
  center: 9,
  x: 12,
  r: 13,
  /** Farthest point of the cell from its center; how far a point of it may come in all. */
  reach: 14,
  most: 15,
  /** Path of the cell's center in the wheel's frame, at most: by the arm, by the steering. */
  armPath: 16,
  steerPath: 17,
  /** Angle the wheel may turn by. */
  spin: 18,
  distance: 19,
  /** What the last `slopeBound` took off for the cell's extent, the arm's range, the steering's range. */
  partShare: 20,
  armShare: 21,
  steerShare: 22,
  armMost: 23,
  steerMost: 24,
} as const;
const VIEW_ROW = 25;

/** The cell looked at last. */
export const view = new Float64Array(VIEW_ROW);

/**
 * Fills `view` for a cell at the middle pose; with a motion, also how far its points may move in the wheel's frame.
 * @param center three numbers to fill with the cell's center.
 */
export function lookFrom(
  center: Float64Array,
  wheel: Float64Array,
  wheelAt: number,
  cells: Float64Array,
  at: number,
  motion: Float64Array | null,
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
  const radius = Math.sqrt(ex * ex + ey * ey + ez * ez);
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
  view[12] = x;
  view[13] = radius;
  const reach = cellReach(cells, at, center[0]!, center[1]!, center[2]!);
  view[14] = reach;
  if (motion === null) {
    view[15] = reach;
    view[16] = 0;
    view[17] = 0;
    return;
  }
  const distance = Math.sqrt(dx * dx + dy * dy + dz * dz);
  view[19] = distance;
  const armMost = speedMost(motion, MOTION.armTurn, MOTION.armTurnOff);
  const steerMost = speedMost(motion, MOTION.steerTurn, MOTION.steerTurnOff);
  const armHalf = motion[MOTION.armHalf]!;
  const steerHalf = motion[MOTION.steerHalf]!;
  view[16] = armHalf * armMost;
  view[17] = steerHalf * steerMost;
  view[18] = armHalf * motion[MOTION.armTurnMost]! + steerHalf * motion[MOTION.steerTurnMost]!;
  view[15] = reach + view[16]! + view[17]!;
  view[23] = armMost;
  view[24] = steerMost;
}

/**
 * d plus the least change along direction (ux, ur) over the cell and the poses; the shares of that change are left
 * in `view`. `down` is the part of ur toward the axis (all of it, or what a mean of planes hides).
 */
export function slopeBound(
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
  const partShare = -cellDescent(cells, at, view[9]!, view[10]!, view[11]!, gx, gy, gz);
  const most = view[15]!;
  const radius = view[13]!;
  const reach = view[14]!;
  let sag = 0;
  if (down < 0) {
    if (!(most < radius)) {
      view[20] = reach;
      view[21] = view[16]!;
      view[22] = view[17]!;
      return d - most;
    }
    sag = (-down * most * most) / (2 * (radius - most));
  }
  // Each share carries its part of the sagitta, or a search would cut where there is nothing left to cut.
  const sagOf = sag > 0 ? sag / most : 0;
  const part = partShare + sagOf * reach;
  view[20] = part;
  if (motion === null) {
    view[21] = 0;
    view[22] = 0;
    return d - part;
  }
  const offset = view[19]!;
  const spin = view[18]!;
  const armShare =
    sagOf * view[16]! +
    motion[MOTION.armHalf]! *
      (speedAlong(motion, MOTION.armTurn, gx, gy, gz) +
        motion[MOTION.armSlideOff]! +
        motion[MOTION.armTurnOff]! * offset +
        motion[MOTION.armTurnMost]! * reach +
        spin * view[23]!);
  const steerShare =
    sagOf * view[17]! +
    motion[MOTION.steerHalf]! *
      (speedAlong(motion, MOTION.steerTurn, gx, gy, gz) +
        motion[MOTION.steerSlideOff]! +
        motion[MOTION.steerTurnOff]! * offset +
        motion[MOTION.steerTurnMost]! * reach +
        spin * view[24]!);
  view[21] = armShare;
  view[22] = steerShare;
  return d - part - armShare - steerShare;
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
    motion[offAt]! * view[19]! +
    motion[offAt + 2]! * view[14]!
  );
}
