import { sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import type { ArmName } from "../../setup/types/loadsTypes.ts";
import { armAngleFor, travelStatus } from "../../suspension/armAngle.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW } from "../../suspension/steering.ts";
import { armAxisOf, carriedByArm, carriedByArmTo, LOWER_ARM, UPPER_ARM } from "../model/carriedByArm.ts";

/** The line an arm turns about: a point of it and its unit direction. */
export interface PivotLine {
  readonly foot: Vec3;
  readonly axis: Vec3;
}

/** One side's linkage at a pose: where forces go in and out. Left-hand frame (the right side mirrored), mm. */
export interface LinkageAt {
  readonly travel: number;
  readonly steer: number;
  readonly lowerBallJoint: Vec3;
  readonly upperBallJoint: Vec3;
  readonly tieRodOuter: Vec3;
  readonly tieRodInner: Vec3;
  readonly wheelCenter: Vec3;
  /** Unit, outboard. */
  readonly wheelAxis: Vec3;
  readonly contactPatch: Vec3;
  /** Axes of the knuckle frame: x forward, y outboard, z up the steering axis. */
  readonly knuckle: { readonly x: Vec3; readonly y: Vec3; readonly z: Vec3 };
  readonly pivots: Readonly<Record<ArmName, PivotLine>>;
  /** A point that an arm carries, given as measured, where it stands now. */
  readonly onArm: (arm: ArmName, measured: Vec3) => Vec3;
}

/** null where the pose is out of reach. @param travel mm; @param steer −1 … +1 */
export function linkageAt(frontEnd: FrontEnd, side: Side, travel: number, steer: number): LinkageAt | null {
  const model = frontEnd[side];
  if (travelStatus(model, travel) !== PoseStatus.Ok) return null;
  const ends = new Float64Array(INNER_ENDS_ROW);
  if (frontEnd.steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return null;
  const angle = armAngleFor(model, travel);
  const inner = vecAt(ends, side === "left" ? 0 : 3);
  const pose = new Float64Array(POSE_ROW);
  const { row } = model;
  if (poseRowTo(pose, 0, row, Math.cos(angle), Math.sin(angle), ...inner) !== PoseStatus.Ok) return null;
  const at = (place: number) => vecAt(pose, place);
  return {
    travel,
    steer,
    lowerBallJoint: at(POSE.lowerBallJoint),
    upperBallJoint: at(POSE.upperBallJoint),
    tieRodOuter: at(POSE.tieRodOuter),
    tieRodInner: at(POSE.tieRodInner),
    wheelCenter: at(POSE.wheelCenter),
    wheelAxis: at(POSE.wheelAxis),
    contactPatch: at(POSE.contactPatch),
    knuckle: { x: at(POSE.knuckleX), y: at(POSE.knuckleY), z: at(POSE.knuckleZ) },
    pivots: {
      lowerArm: { foot: vecAt(row, LOWER_ARM.foot), axis: armAxisOf(row, LOWER_ARM) },
      upperArm: { foot: vecAt(row, UPPER_ARM.foot), axis: armAxisOf(row, UPPER_ARM) },
    },
    onArm: (name, measured) => {
      const arm = name === "lowerArm" ? LOWER_ARM : UPPER_ARM;
      const foot = vecAt(row, arm.foot);
      const carried = carriedByArm(row, arm, sub(measured, foot), null);
      const out = new Float64Array(3);
      carriedByArmTo(out, row, arm, carried, pose, 0);
      return [foot[0] + out[0]!, foot[1] + out[1]!, foot[2] + out[2]!];
    },
  };
}
