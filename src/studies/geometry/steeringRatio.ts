import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import { wheelMotion } from "../../suspension/wheelMotion.ts";

/** How far the road wheels turn for what goes into the linkage, at one pose. */
export interface SteeringRatio {
  readonly type: "rack" | "pitman";
  /**
   * Steer angle of each wheel and their mean per input: rad per rad of the pitman arm (so degrees per degree), or rad per
   * mm of rack. The gearbox and the steering wheel are not in a setup: ISO 8855's overall steering ratio is the gear
   * ratio divided by `mean` of a pitman linkage.
   */
  readonly left: number;
  readonly right: number;
  readonly mean: number;
}

/** The steering's rates at a travel (mm) and steer. @returns null out of reach, or where a wheel stands at its border. */
export function steeringRatio(frontEnd: FrontEnd, travel: number, steer: number): SteeringRatio | null {
  const { steering } = frontEnd.input;
  const perSteer = steering.type === "rack" ? steering.stroke : steering.swing;
  const turn = (side: Side) => wheelMotion(frontEnd, side, travel, steer)?.turnPerSteer ?? null;
  const [leftOut, rightOut] = [turn("left"), turn("right")];
  if (leftOut === null || rightOut === null) return null;
  // A left wheel toes out in a left turn, a right one in a right turn.
  const left = leftOut / perSteer;
  const right = -rightOut / perSteer;
  return { type: steering.type, left, right, mean: 0.5 * (left + right) };
}

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
