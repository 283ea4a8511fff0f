import type { Side } from "../../suspension/frontEnd.ts";
import { type SidePose, solvePose } from "../../suspension/solvePose.ts";
import { type BumpSteer, bumpSteer } from "../geometry/bumpSteer.ts";
import { followedRange } from "../geometry/geometryReport.ts";
import type { Model } from "../model/model.ts";
import type { PoseTarget } from "./solveTypes.ts";

const READ: Readonly<Record<PoseTarget, (side: SidePose) => number>> = {
  camber: ({ camber }) => camber,
  caster: ({ caster }) => caster,
  kingpinInclination: ({ kingpinInclination }) => kingpinInclination,
  scrubRadius: ({ scrubRadius }) => scrubRadius,
  mechanicalTrail: ({ mechanicalTrail }) => mechanicalTrail,
  halfTrack: ({ contactPatch }) => Math.abs(contactPatch[1]),
};

/** A number of the left wheel at a travel, straight ahead; mm or radians, NaN where it cannot stand so. */
export function poseNumber({ frontEnd }: Model, of: PoseTarget, travel = 0): number {
  const pose = solvePose(frontEnd, travel, 0);
  return pose.ok ? READ[of](pose.left) : Number.NaN;
}

/** Bump steer of both wheels over the travel they follow, rad; NaN where they follow none. */
export interface BothBumpSteer {
  /** Root mean square over both. */
  readonly rms: number;
  /** The toe change of either farthest from 0. */
  readonly most: number;
}

export function bothBumpSteer(model: Model): BothBumpSteer {
  const range = followedRange(model);
  const of = (side: Side): BumpSteer | null => bumpSteer(model.frontEnd, side, range);
  const left = range.droop < range.bump ? of("left") : null;
  const right = left === null || model.mirrored ? left : of("right");
  if (left === null || right === null) return { rms: Number.NaN, most: Number.NaN };
  const [one, other] = [left.most.toeChange, right.most.toeChange];
  return {
    rms: Math.sqrt(0.5 * (left.rms ** 2 + right.rms ** 2)),
    most: Math.abs(other) > Math.abs(one) ? other : one,
  };
}
