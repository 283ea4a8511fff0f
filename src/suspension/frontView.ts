import type { WheelMotion } from "./wheelMotion.ts";

/** A line of the front view, in the side's left-hand frame: through `y`, `z` with `slope` = dz/dy; all mm. */
export interface ForceLine {
  readonly y: number;
  readonly z: number;
  readonly slope: number;
}

/** A place in the front view, vehicle axes or a side's left-hand frame, mm. */
export interface FrontViewPlace {
  readonly y: number;
  readonly z: number;
}

/**
 * Instant center of one wheel in the front view, left-hand frame: the point of the transverse vertical plane through
 * the contact patch about which the patch turns at the rate the wheel leans. The patch is the contact of each pose, which
 * wanders over the tire, not a point fixed to the wheel: forces of the ground go through where the contact is. In a
 * planar suspension it is where the lines of both arms cross (Gillespie, Fundamentals of Vehicle Dynamics, 1992, the
 * chapter on suspensions; ISO 8855:2011 and SAE J670 on the swing center; from memory).
 * @returns null where the wheel does not lean as it travels: the instant center is at infinity.
 */
export function instantCenter({ contactPatch, contactVelocity, turn }: WheelMotion): FrontViewPlace | null {
  // v_y = −ω_x (z − z₀), v_z = ω_x (y − y₀) about (y₀, z₀).
  const y = contactPatch[1] - contactVelocity[2] / turn[0];
  const z = contactPatch[2] + contactVelocity[1] / turn[0];
  return Math.abs(y) < FARTHEST && Math.abs(z) < FARTHEST ? { y, z } : null;
}

/** mm. 1000 km: farther off nothing but rounding tells the arms from parallel. */
const FARTHEST = 1e9;

/**
 * The line through the contact patch on which a force from the ground moves nothing: across the patch's velocity, so
 * that its virtual work is nil. It runs through the instant center, and exists where that is at infinity too.
 */
export function forceLine({ contactPatch, contactVelocity }: WheelMotion): ForceLine {
  return { y: contactPatch[1], z: contactPatch[2], slope: -contactVelocity[1] / contactVelocity[2] };
}
