import { mirrorY, type Vec3, vecAt } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import type { SolvedPose } from "../../suspension/solvePose.ts";
import { knuckleDirectionTo } from "../model/carried.ts";
import { carriedByArmTo, LOWER_ARM, UPPER_ARM } from "../model/carriedByArm.ts";
import type { Model } from "../model/model.ts";
import { jointAxesOf } from "./jointLimits.ts";

/** A ball joint's cone at a pose, for who draws it; vehicle axes, mm, radians. */
export interface JointCone {
  readonly name: "upper ball joint" | "lower ball joint";
  readonly side: Side;
  readonly center: Vec3;
  /** Unit: the housing's axis, in the middle of the cone, and the stud. */
  readonly housing: Vec3;
  readonly stud: Vec3;
  /** Half angle the stud may lean in. */
  readonly cone: number;
}

/** The cones of every ball joint the setup limits, at one pose; left side first. */
export function jointConesAt(model: Model, pose: SolvedPose): JointCone[] {
  const { limits } = model.setup;
  if (limits === null) return [];
  const direction = new Float64Array(3);
  return (["left", "right"] as const).flatMap((side) => {
    const { row: constants, innerAtRest } = model.frontEnd[side];
    const rest = new Float64Array(POSE_ROW);
    const [x, y, z] = innerAtRest;
    poseRowTo(rest, 0, constants, 1, 0, x, y, z);
    const { row } = pose[side];
    const onSide = (v: Vec3) => (side === "right" ? mirrorY(v) : v);
    return (
      [
        ["upper ball joint", UPPER_ARM, limits.upperBallJoint],
        ["lower ball joint", LOWER_ARM, limits.lowerBallJoint],
      ] as const
    ).flatMap(([name, arm, limit]) => {
      if (limit === null) return [];
      const axes = jointAxesOf(constants, arm, limit, rest);
      carriedByArmTo(direction, constants, arm, axes.housing, row, 0);
      const housing = onSide(vecAt(direction, 0));
      knuckleDirectionTo(direction, row, 0, axes.stud);
      const stud = onSide(vecAt(direction, 0));
      return [{ name, side, center: onSide(vecAt(row, arm.joint)), housing, stud, cone: limit.cone }];
    });
  });
}
