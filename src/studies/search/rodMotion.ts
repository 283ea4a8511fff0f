import { CELL, CellKind } from "../../gaps/cells/cells.ts";
import { MOTION, MOTION_ROW } from "../../geometry/motionRow.ts";
import type { InnerEndSpread } from "../../suspension/motionBound.ts";
import { POSE } from "../../suspension/poseRow.ts";

/** How the inner end of a rod moves on the truck over a cell of poses; null = it stands still. */
export interface InnerEndMotion {
  /** Its velocity at the middle pose, mm per unit of steer, left-hand frame. */
  readonly velocity: readonly [number, number, number];
  readonly spread: InnerEndSpread;
}

/**
 * Turns the wheel's motion over a cell of poses into that of a rod's inner end B as seen from the wheel. There
 * the rod's outer end K stands still, a point at fraction s from it is K + s·(B − K) and moves by s times what B
 * does, and B moves by the integral of −Rᵀ(v + ω × (B − c) − Ḃ). To first order that is V₀, the velocity at the
 * middle, and it may be off by δ + Ω·V: δ the sum of the wheel's own δv + δω·|B − c|, |ω| × how far B may have
 * gone, and how far Ḃ may be off; Ω bounds the turn of the wheel's frame, V the speed. So the row filled is that
 * of a wheel that only slides. See `public/docs/certified-gaps.md`.
 *
 * @param out, wheel `MOTION` rows; `wheel` filled by `motionBoundTo` at `pose`. May be the same row.
 * @param innerX, innerY, innerZ B at the middle pose.
 */
export function rodMotionTo(
  out: Float64Array,
  wheel: Float64Array,
  pose: Float64Array,
  innerX: number,
  innerY: number,
  innerZ: number,
  inner: InnerEndMotion | null,
): void {
  const dx = innerX - pose[POSE.wheelCenter]!;
  const dy = innerY - pose[POSE.wheelCenter + 1]!;
  const dz = innerZ - pose[POSE.wheelCenter + 2]!;
  const lever = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const armHalf = wheel[MOTION.armHalf]!;
  const steerHalf = wheel[MOTION.steerHalf]!;
  const armTurnMost = wheel[MOTION.armTurnMost]!;
  const steerTurnMost = wheel[MOTION.steerTurnMost]!;
  const spin = armHalf * armTurnMost + steerHalf * steerTurnMost;
  const gone = inner === null ? 0 : inner.spread.speedMost * steerHalf;

  for (const [turnAt, turnMost, own] of [
    [MOTION.armTurn, armTurnMost, null],
    [MOTION.steerTurn, steerTurnMost, inner],
  ] as const) {
    const wx = wheel[turnAt]!;
    const wy = wheel[turnAt + 1]!;
    const wz = wheel[turnAt + 2]!;
    const x = wheel[turnAt + 3]! + wy * dz - wz * dy - (own === null ? 0 : own.velocity[0]);
    const y = wheel[turnAt + 4]! + wz * dx - wx * dz - (own === null ? 0 : own.velocity[1]);
    const z = wheel[turnAt + 5]! + wx * dy - wy * dx - (own === null ? 0 : own.velocity[2]);
    const offAt = turnAt === MOTION.armTurn ? MOTION.armTurnOff : MOTION.steerTurnOff;
    const off =
      wheel[offAt + 1]! +
      wheel[offAt]! * lever +
      turnMost * gone +
      (own === null ? 0 : own.spread.velocityOff);
    const most = Math.sqrt(x * x + y * y + z * z) + off;
    out[turnAt] = 0;
    out[turnAt + 1] = 0;
    out[turnAt + 2] = 0;
    out[turnAt + 3] = x;
    out[turnAt + 4] = y;
    out[turnAt + 5] = z;
    out[offAt] = 0;
    out[offAt + 1] = off + spin * most;
    out[offAt + 2] = 0;
  }
  out[MOTION.armHalf] = armHalf;
  out[MOTION.steerHalf] = steerHalf;
}

/** The motion of the piece of a rod up to fraction `far`: points nearer K move by less, the same way. */
export function scaledMotionTo(out: Float64Array, inner: Float64Array, far: number): void {
  for (let i = MOTION.armTurn; i < MOTION_ROW; i++) out[i] = far * inner[i]!;
  out[MOTION.armHalf] = inner[MOTION.armHalf]!;
  out[MOTION.steerHalf] = inner[MOTION.steerHalf]!;
}

/**
 * Fills a cell row with the piece of a rod between fractions `near` and `far` from its outer end. mm.
 * @param outer, inner the rod's ends, three numbers each at `outerAt`, `innerAt`.
 */
export function rodCellTo(
  out: Float64Array,
  outer: ArrayLike<number>,
  outerAt: number,
  inner: ArrayLike<number>,
  innerAt: number,
  near: number,
  far: number,
  radius: number,
): void {
  out[0] = CellKind.Segment;
  for (let i = 0; i < 3; i++) {
    const k = outer[outerAt + i]!;
    const along = inner[innerAt + i]! - k;
    out[1 + i] = k + near * along;
    out[4 + i] = k + far * along;
    out[7 + i] = 0;
  }
  out[CELL.radius] = radius;
}
