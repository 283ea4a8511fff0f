import type { FrontEnd } from "./frontEnd.ts";
import { type ForceLine, type FrontViewPlace, forceLine } from "./frontView.ts";
import { wheelMotion } from "./wheelMotion.ts";

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
