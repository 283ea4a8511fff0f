import type { FrontEnd } from "../../suspension/frontEnd.ts";
import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";

/** How the body moves as the wheels are steered on the floor. mm and radians. */
export interface Jacking {
  /** Rise of the body over the front axle, on the center plane. */
  readonly rise: number;
  /** Roll of the body, + = left side up (about +X, ISO 8855). */
  readonly roll: number;
}

/**
 * How far steering lifts and rolls the front of the body, against straight ahead at the same travel (mm). Assumes that
 * the springs hold both lower arms where they are, that the rear does not follow, and a flat floor under both contact
 * patches: on the truck the springs give way a little, so the rise is an upper end and load moves between the wheels.
 * @returns null out of reach.
 */
export function jackingAt(frontEnd: FrontEnd, travel: number, steer: number): Jacking | null {
  const straight = solvePose(frontEnd, travel, 0);
  const pose = solvePose(frontEnd, travel, steer);
  if (!straight.ok || !pose.ok) return null;
  const from = floorOf(straight);
  const to = floorOf(pose);
  // The floor sinks in the body's axes as much as the body rises over the floor.
  return { rise: from.height - to.height, roll: from.lean - to.lean };
}

/** The line of the floor under both contact patches, in the body's axes: its height on the center plane and its lean. */
function floorOf({ left: { contactPatch: l }, right: { contactPatch: r } }: SolvedPose) {
  const slope = (l[2] - r[2]) / (l[1] - r[1]);
  return { height: l[2] - slope * l[1], lean: Math.atan(slope) };
}
