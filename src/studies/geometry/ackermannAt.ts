import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import type { Model } from "../model/model.ts";

/** How near a linkage comes to Ackermann steering at one steer. Radians, all angles 0 or more. */
export interface Ackermann {
  /** How far the wheel on the inside and the one on the outside of the turn have turned from straight ahead. */
  readonly inner: number;
  readonly outer: number;
  /** Where the outer wheel would have to be so that neither scrubs, the inner one as it is. */
  readonly idealOuter: number;
  /** outer − idealOuter, + = the outer wheel turns more than it needs to. */
  readonly error: number;
  /** 100 = no scrub, 0 = both wheels turned alike, less than 0 = the outer one turned more. Percent. */
  readonly percent: number;
}

/** rad. A twentieth of a degree: below it a percentage is rounding over rounding. */
const LEAST_TURN = Math.PI / 3600;

/**
 * Ackermann percentage and error at a travel (mm) and steer. No scrub: cot δ_outer = cot δ_inner + w / l, w between
 * the steering axes where they meet the ground, l the wheelbase (ISO 8855:2011 7.1.9 Ackermann geometry; Gillespie,
 * Fundamentals of Vehicle Dynamics, 1992, the chapter on steering; from memory). The percentage is
 * 100 (δ_inner − δ_outer) / (δ_inner − δ_ideal); books differ, this is the one over wheel angles. Angles are taken
 * from where the wheels stand straight ahead, so that static toe, a matter of the tie rods, does not count.
 * @returns null without a wheelbase, where no wheel turns, and out of reach.
 */
export function ackermannAt(model: Model, travel: number, steer: number): Ackermann | null {
  const { wheelbase } = model.setup.truck;
  const straight = solvePose(model.frontEnd, travel, 0);
  const pose = solvePose(model.frontEnd, travel, steer);
  if (wheelbase === null || !straight.ok || !pose.ok) return null;
  const left = pose.left.steerAngle - straight.left.steerAngle;
  const right = pose.right.steerAngle - straight.right.steerAngle;
  const way = Math.sign(left + right);
  const [inner, outer] = way > 0 ? [left, right] : [-right, -left];
  if (!(inner > LEAST_TURN)) return null;
  const width = axisAtGround(straight.left) - axisAtGround(straight.right);
  const idealOuter = Math.atan2(1, 1 / Math.tan(inner) + width / wheelbase);
  const percent = (100 * (inner - outer)) / (inner - idealOuter);
  return { inner, outer, idealOuter, error: outer - idealOuter, percent };
}

/** Y where the steering axis meets the ground under the contact patch, vehicle axes, mm. */
function axisAtGround({ lowerBallJoint: low, upperBallJoint: up, contactPatch }: SolvedPose["left"]): number {
  const share = (contactPatch[2] - low[2]) / (up[2] - low[2]);
  return low[1] + share * (up[1] - low[1]);
}
