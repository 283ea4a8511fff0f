import type { SolvedPose } from "../../suspension/solvePose.ts";

/** Height of the floor at a pose, mm: where the contact patches stand, halfway between the two. The body is held still. */
export function floorOf(pose: SolvedPose): number {
  return 0.5 * (pose.left.contactPatch[2] + pose.right.contactPatch[2]);
}
