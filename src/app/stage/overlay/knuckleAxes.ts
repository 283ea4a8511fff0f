import { addScaled, mirrorY, type Vec3, vecAt } from "../../../geometry/vec.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import { POSE } from "../../../suspension/poseRow.ts";
import type { SolvedPose } from "../../../suspension/solvePose.ts";

/** Where the knuckle's own axes stand, vehicle axes: unit vectors forward, outboard and up the steering axis. */
export interface KnuckleAxes {
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
  /** A point of the knuckle frame, mm. */
  readonly at: (forward: number, out: number, up: number) => Vec3;
}

/** The axes of one knuckle at a pose; of the right one mirrored. */
export function knuckleAxes(pose: SolvedPose, side: Side): KnuckleAxes {
  const { row } = pose[side];
  const turned = (at: number): Vec3 => {
    const v = vecAt(row, at);
    return side === "left" ? v : mirrorY(v);
  };
  const [x, y, z] = [turned(POSE.knuckleX), turned(POSE.knuckleY), turned(POSE.knuckleZ)];
  const origin = turned(POSE.lowerBallJoint);
  return {
    x,
    y,
    z,
    at: (forward, out, up) => addScaled(addScaled(addScaled(origin, x, forward), y, out), z, up),
  };
}
