import { addScaled, cross, dot, normalize, sub, type Vec3 } from "../geometry/vec.ts";
import type { ArmInput } from "./inputs.ts";

/** A control arm as the circle its ball joint runs on: joint(α) = foot + cos α·radial + sin α·quarter, mm. */
export interface ArmCircle {
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
