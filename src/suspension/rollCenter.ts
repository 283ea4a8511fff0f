import type { FrontEnd } from "./frontEnd.ts";
import { type WheelMotion, wheelMotion } from "./wheelMotion.ts";

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

/** The kinematic roll center. Vehicle axes, mm. */
export interface RollCenter extends FrontViewPlace {
  /** Along Z, above the line between the contact patches at the roll center's own y, mm: not square to that line. */
  readonly height: number;
}

/** Travel of each wheel, mm. */
export interface WheelTravels {
  readonly left: number;
  readonly right: number;
}

/**
 * Kinematic roll center: where the force lines of both contact patches cross, the point of the transverse vertical
 * plane at which a sideways force on the body causes no suspension roll (SAE J670e and ISO 8855 roll center; the
 * construction in Milliken & Milliken, Race Car Vehicle Dynamics, 1995, chapter 17; both from memory). With wheels
 * toed or steered their planes differ a little in X; the lines are laid into one front view.
 * @returns null where a wheel is out of reach, or the lines are parallel and do not cross.
 */
export function rollCenter(frontEnd: FrontEnd, travels: WheelTravels, steer: number): RollCenter | null {
  const left = wheelMotion(frontEnd, "left", travels.left, steer);
  const right = wheelMotion(frontEnd, "right", travels.right, steer);
  if (left === null || right === null) return null;
  return crossing(forceLine(left), mirrored(forceLine(right)));
}

/** mm. Lines that run together this closely at both patches are one line: both level, on the ground. */
const SAME_LINE = 1e-6;

function crossing(left: ForceLine, right: ForceLine): RollCenter | null {
  const rightAtLeft = right.z + right.slope * (left.y - right.y);
  const width = left.y - right.y;
  const apart = rightAtLeft - left.z;
  const openness = (left.slope - right.slope) * width;
  const ground = (y: number) => right.z + ((left.z - right.z) * (y - right.y)) / width;
  if (Math.abs(apart) < SAME_LINE && Math.abs(openness) < SAME_LINE) {
    // Every point of the line would do; the middle is the limit of a truck alike on both sides.
    const y = 0.5 * (left.y + right.y);
    return { y, z: ground(y), height: 0 };
  }
  if (Math.abs(openness) < SAME_LINE) return null;
  const y = left.y + (apart * width) / openness;
  const z = left.z + left.slope * (y - left.y);
  return { y, z, height: z - ground(y) };
}

/** A line of the right side's mirrored frame in vehicle axes. */
function mirrored({ y, z, slope }: ForceLine): ForceLine {
  return { y: -y, z, slope: -slope };
}
