import type { SolvedPose } from "../../suspension/solvePose.ts";

/** Height of the floor at a pose, mm: where the contact patches stand, halfway between the two. The body is held still. */
export function floorOf({ left, right }: Pick<SolvedPose, "left" | "right">): number {
  return 0.5 * (left.contactPatch[2] + right.contactPatch[2]);
}
