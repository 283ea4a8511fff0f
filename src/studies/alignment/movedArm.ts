import { addScaled, length, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import { leastTurn } from "../../suspension/centerLink.ts";
import type { ArmInput } from "../../suspension/inputs.ts";
import { armCircleOf } from "../../suspension/sideRow.ts";

/** How far both pivots of an arm are moved, vehicle axes, mm. */
export interface PivotMoves {
  readonly front: Vec3;
  readonly rear: Vec3;
}

/**
 * The arm with its pivots moved, keeping its own shape: the shaft through both pivots is rigid, so where front and
 * rear move differently it swings to the new line about the middle, and the pivots keep their distance. The ball joint
 * follows by the least turn; for an upper arm that only tells the side it is on, since the knuckle places it.
 * @returns null for moves that turn the shaft end for end.
 */
export function movedArm(arm: ArmInput, { front, rear }: PivotMoves): ArmInput | null {
  if ([...front, ...rear].every((part) => part === 0)) return arm;
  const middle = midpoint(arm.frontPivot, arm.rearPivot);
  const to = addScaled(middle, midpoint(front, rear), 1);
  const shaft = sub(arm.rearPivot, arm.frontPivot);
  const half = 0.5 * length(shaft);
  const moved = addScaled(shaft, sub(rear, front), 1);
  if (!(length(moved) > 0)) return null;
  const line = normalize(moved);
  const turn = leastTurn(normalize(shaft), line, [0, 0, 0]);
  if (turn === null) return null;
  return {
    frontPivot: addScaled(to, line, -half),
    rearPivot: addScaled(to, line, half),
    ballJoint: addScaled(to, turn(sub(arm.ballJoint, middle)).at, 1),
  };
}

/**
 * A lower arm turned about its pivots until its ball joint stands at a height again: travel 0 is the pose with the
 * lower ball joint at its measured height. @param z mm @returns null when the arm does not reach that height.
 */
export function lowerArmAt(arm: ArmInput, z: number): ArmInput | null {
  if (arm.ballJoint[2] === z) return arm;
  const { foot, radial, quarter } = armCircleOf(arm);
  // radial_z cos + quarter_z sin = z − foot_z, the root next to cos = 1.
  const [a, b, c] = [radial[2], quarter[2], z - foot[2]];
  const normSq = a * a + b * b;
  const hSq = normSq - c * c;
  if (!(hSq >= 0)) return null;
  const h = Math.sqrt(hSq);
  const [cos, sin] = [(a * c + b * h) / normSq, (b * c - a * h) / normSq];
  return { ...arm, ballJoint: addScaled(addScaled(foot, radial, cos), quarter, sin) };
}

/**
 * An arm whose legs, pivot to ball joint, are longer by so much (mm, − = shorter), its pivots staying put.
 * @returns null when legs of that length do not meet.
 */
export function lengthenedArm(arm: ArmInput, front: number, rear: number): ArmInput | null {
  if (front === 0 && rear === 0) return arm;
  const shaft = sub(arm.rearPivot, arm.frontPivot);
  const shaftLength = length(shaft);
  const frontLeg = length(sub(arm.ballJoint, arm.frontPivot)) + front;
  const rearLeg = length(sub(arm.ballJoint, arm.rearPivot)) + rear;
  if (!(frontLeg > 0 && rearLeg > 0)) return null;
  const along = (frontLeg ** 2 - rearLeg ** 2 + shaftLength ** 2) / (2 * shaftLength);
  const radiusSq = frontLeg ** 2 - along ** 2;
  if (!(radiusSq > 0)) return null;
  const foot = addScaled(arm.frontPivot, shaft, along / shaftLength);
  const outward = normalize(armCircleOf(arm).radial);
  return { ...arm, ballJoint: addScaled(foot, outward, Math.sqrt(radiusSq)) };
}

function midpoint(a: Vec3, b: Vec3): Vec3 {
  return scale(addScaled(a, b, 1), 0.5);
}
