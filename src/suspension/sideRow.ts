import { addScaled, cross, dot, normalize, sub, type Vec3 } from "../geometry/vec.ts";
import type { ArmInput } from "./inputs.ts";

/**
 * The constants of one side as a flat row, so that a sweep touches one small block of memory.
 * Left-hand frame: vehicle axes for the left side; the right side is stored mirrored (y turned) and
 * is therefore a left side too. mm.
 */
export const SIDE = {
  /** Foot of the lower ball joint on the lower pivot line. */
  lowerFoot: 0,
  /** From that foot to the ball joint as measured. */
  lowerRadial: 3,
  /** Same length, a quarter turn on, in the direction that lifts the ball joint. */
  lowerQuarter: 6,
  upperFoot: 9,
  upperRadial: 12,
  upperQuarter: 15,
  span: 18,
  /** Which of the two meetings of circle and sphere is taken: +1 or −1. */
  upperRoot: 19,
  /** Outer tie rod end in the knuckle frame. */
  steeringArm: 20,
  pinCos: 23,
  pinSin: 24,
  /** Wheel center in the knuckle frame. */
  wheelCenter: 25,
  /** Mounting face outboard of the wheel center, along the pin. */
  offset: 28,
  tieRodLength: 29,
  tieRodRoot: 30,
  loadedRadius: 31,
} as const;

/** Numbers in a side row. */
export const SIDE_ROW = 32;

/** A control arm as the circle its ball joint runs on: joint(α) = foot + cos α·radial + sin α·quarter, mm. */
interface ArmCircle {
  readonly foot: Vec3;
  readonly radial: Vec3;
  readonly quarter: Vec3;
}

/**
 * The circle of an arm, α = 0 as measured, + = the ball joint rises. Swapping the pivots changes nothing.
 * @throws RangeError when the pivots coincide (the reader refuses such a setup).
 */
export function armCircleOf(arm: ArmInput): ArmCircle {
  const axis = normalize(sub(arm.rearPivot, arm.frontPivot));
  const toJoint = sub(arm.ballJoint, arm.frontPivot);
  const foot = addScaled(arm.frontPivot, axis, dot(toJoint, axis));
  const radial = sub(arm.ballJoint, foot);
  const quarter = cross(axis, radial);
  return { foot, radial, quarter: quarter[2] < 0 ? [-quarter[0], -quarter[1], -quarter[2]] : quarter };
}
