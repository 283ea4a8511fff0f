import { length, sub } from "../../geometry/vec.ts";
import type { Setup } from "../../setup/types/types.ts";
import { assembleFrontEnd, type FrontEnd } from "../../suspension/frontEnd.ts";
import type { ArmInput } from "../../suspension/inputs.ts";
import { armCircleOf } from "../../suspension/sideRow.ts";
import { solvePose } from "../../suspension/solvePose.ts";

/** What it does that the knuckle's span is not the distance of the two arms' ball joints as measured. mm, radians. */
export interface SpanEffect {
  readonly span: number;
  /** Ball joint to ball joint, the arms as measured. */
  readonly apart: number;
  /** At travel 0, steer 0, left side: with this span, and with one that is just `apart`. */
  readonly withSpan: HeldKnuckle;
  readonly asMeasured: HeldKnuckle;
}

export interface HeldKnuckle {
  readonly camber: number;
  readonly caster: number;
  /** In the front view, + = ball joint higher than the pivots. */
  readonly upperArm: number;
}

/** The effect, from the solver's own poses; null where one of the two does not go together. */
export function spanEffect({ knuckle, truck }: Setup, frontEnd: FrontEnd): SpanEffect | null {
  const { upperArm, lowerArm } = truck;
  const apart = length(sub(upperArm.ballJoint, lowerArm.ballJoint));
  const { input } = frontEnd;
  const other = assembleFrontEnd({ ...input, knuckle: { ...input.knuckle, span: apart } });
  const withSpan = heldIn(frontEnd);
  const asMeasured = other.ok ? heldIn(other.frontEnd) : null;
  return withSpan && asMeasured && { span: knuckle.span, apart, withSpan, asMeasured };
}

function heldIn(frontEnd: FrontEnd): HeldKnuckle | null {
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) return null;
  const { camber, caster, upperBallJoint } = pose.left;
  return { camber, caster, upperArm: armLean({ ...frontEnd.input.upperArm, ballJoint: upperBallJoint }) };
}

/** An arm's angle in the front view, pivot axis to ball joint against level, radians, + = ball joint higher. */
export function armLean(arm: ArmInput): number {
  const { foot } = armCircleOf(arm);
  return Math.atan2(arm.ballJoint[2] - foot[2], arm.ballJoint[1] - foot[1]);
}
