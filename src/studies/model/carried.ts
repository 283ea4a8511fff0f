import { MOTION } from "../../geometry/motionRow.ts";
import type { Vec3 } from "../../geometry/vec.ts";
import type { InnerEndSpread } from "../../suspension/motionBound.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";

/**
 * What rides on the knuckle or an arm, and how far it can move in a cell of poses. Three numbers at a time in rows the
 * caller owns; nothing is allocated. With Ω the greatest turn of the knuckle in the cell (sum over both inputs of half
 * range × |ω|), δ how far ω can be from the middle's, a vector v carried by the knuckle is nowhere farther than
 * σ = S/(1 − Ω) from the middle's, S the sum of half range × (|ω₀ × v₀| + δ|v|): its velocity ω × v differs from
 * ω₀ × v₀ by at most δ|v| + |ω|σ.
 */

/** out = the knuckle frame's [x, y, z] as a direction. */
export function knuckleDirectionTo(out: Float64Array, pose: Float64Array, at: number, [x, y, z]: Vec3): void {
  for (let i = 0; i < 3; i++) {
    out[i] =
      x * pose[at + POSE.knuckleX + i]! +
      y * pose[at + POSE.knuckleY + i]! +
      z * pose[at + POSE.knuckleZ + i]!;
  }
}

/** |ω × v| for the angular velocity at `omegaAt` of a row. */
function crossSize(row: Float64Array, omegaAt: number, v: Float64Array): number {
  const [wx, wy, wz] = [row[omegaAt]!, row[omegaAt + 1]!, row[omegaAt + 2]!];
  const x = wy * v[2]! - wz * v[1]!;
  const y = wz * v[0]! - wx * v[2]!;
  const z = wx * v[1]! - wy * v[0]!;
  return Math.sqrt(x * x + y * y + z * z);
}

function sizeOf(v: Float64Array): number {
  return Math.sqrt(v[0]! * v[0]! + v[1]! * v[1]! + v[2]! * v[2]!);
}

/** Path of a vector carried by the knuckle within the cell: `out[0]` by the arm, `out[1]` by the steering; the sum is σ. */
export function carriedPathTo(out: Float64Array, cell: CellMotion, v: Float64Array): void {
  const { motion, armHalf, steerHalf } = cell;
  const size = sizeOf(v);
  const turn = armHalf * motion[MOTION.armTurnMost]! + steerHalf * motion[MOTION.steerTurnMost]!;
  if (!(turn < 1)) {
    out[0] = armHalf > 0 ? Number.POSITIVE_INFINITY : 0;
    out[1] = steerHalf > 0 ? Number.POSITIVE_INFINITY : 0;
    return;
  }
  const arm = armHalf * (crossSize(motion, MOTION.armTurn, v) + size * motion[MOTION.armTurnOff]!);
  const steer = steerHalf * (crossSize(motion, MOTION.steerTurn, v) + size * motion[MOTION.steerTurnOff]!);
  const off = (arm + steer) / (1 - turn);
  out[0] = arm + armHalf * motion[MOTION.armTurnMost]! * off;
  out[1] = steer + steerHalf * motion[MOTION.steerTurnMost]! * off;
}

// Leaf scratch.
const offset = new Float64Array(3);
const offsetPath = new Float64Array(2);

/**
 * Path, within the cell, of a point carried by the knuckle less `inner`, the motion of the inner tie rod end when
 * `lessInner`: the lower ball joint runs on its circle, the point about it as a carried vector. mm.
 * @param x, y, z the point at the middle pose.
 */
export function carriedPointPathTo(
  out: Float64Array,
  side: Float64Array,
  pose: Float64Array,
  at: number,
  cell: CellMotion,
  point: Float64Array,
  lessInner: boolean,
): void {
  for (let i = 0; i < 3; i++) offset[i] = point[i]! - pose[at + i]!;
  carriedPathTo(offsetPath, cell, offset);
  const off = offsetPath[0]! + offsetPath[1]!;
  if (!(off < Number.POSITIVE_INFINITY)) {
    out[0] = offsetPath[0]!;
    out[1] = offsetPath[1]!;
    return;
  }
  const { motion, armHalf, steerHalf, inner, innerSpread } = cell;
  const size = sizeOf(offset);
  let armSq = 0;
  let steerSq = 0;
  let radiusSq = 0;
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    const circle = cell.cosArm * side[SIDE.lowerQuarter + i]! - cell.sinArm * side[SIDE.lowerRadial + i]!;
    const arm = motion[MOTION.armTurn + j]! * offset[k]! - motion[MOTION.armTurn + k]! * offset[j]! + circle;
    const steer =
      motion[MOTION.steerTurn + j]! * offset[k]! -
      motion[MOTION.steerTurn + k]! * offset[j]! -
      (lessInner ? inner[i]! : 0);
    armSq += arm * arm;
    steerSq += steer * steer;
    radiusSq += side[SIDE.lowerRadial + i]! ** 2;
  }
  out[0] =
    armHalf *
    (Math.sqrt(armSq) +
      Math.sqrt(radiusSq) * armHalf +
      size * motion[MOTION.armTurnOff]! +
      motion[MOTION.armTurnMost]! * off);
  out[1] =
    steerHalf *
    (Math.sqrt(steerSq) +
      size * motion[MOTION.steerTurnOff]! +
      motion[MOTION.steerTurnMost]! * off +
      (lessInner ? innerSpread.velocityOff : 0));
}

/** How one side moves over a cell of lower arm angle × steer about its middle pose: proven, left-hand frame, mm, rad. */
export interface CellMotion {
  /** Filled by `motionBoundTo` at the middle. */
  readonly motion: Float64Array;
  /** Velocity of the inner tie rod end, mm per unit of steer; bounds of it over the cell. */
  readonly inner: readonly [number, number, number];
  readonly innerSpread: InnerEndSpread;
  /** Half ranges: radians of lower arm, units of steer. */
  readonly armHalf: number;
  readonly steerHalf: number;
  /** Of the middle's lower arm angle. */
  readonly cosArm: number;
  readonly sinArm: number;
  /** Travel, mm, at the ends of the arm's range; NaN out of reach. */
  readonly travelLow: number;
  readonly travelHigh: number;
  /**
   * The cell holds the border of reach: `motion` then tells no speeds, but the turn from the middle's frame to that of
   * any pose of the cell, as the arm's, and the middle is a pose amid those of the cell.
   */
  readonly displaced: boolean;
}
