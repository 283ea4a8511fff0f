import { type Vec3, vecAt } from "../../geometry/vec.ts";
import type { StanceMeasure } from "../../setup/types/floorTypes.ts";
import { airMotion } from "../../suspension/airMotion.ts";
import type { FrontEnd } from "../../suspension/frontEnd.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { type ApartPose, solveApart } from "../../suspension/solvePose.ts";
import { floorPlane, heightOver, loadedRadii } from "./floorPlane.ts";
import type { StandingTruck } from "./floorPose.ts";

/** One height in everything a shop reads a stance by: left side, straight ahead, both wheels alike. mm, radians. */
export interface StanceMeasures {
  readonly travel: number;
  /** In the front view, pivot axis to ball joint against level, + = ball joint lower than the pivots. */
  readonly lowerArmAngle: number;
  /** Mount to mount; null = no air spring given. */
  readonly airSpringHeight: number | null;
  /** Floor to fender lip, floor to frame; null = the setup does not say where they are measured. */
  readonly lipHeight: number | null;
  readonly frameHeight: number | null;
}

/** A height, told by its travel (mm, both wheels), in all measures. @returns null out of reach */
export function stanceMeasures(truck: StandingTruck, travel: number): StanceMeasures | null {
  const lowerArmAngle = measureAt(truck, "lowerArmAngle", travel);
  if (lowerArmAngle === null) return null;
  const of = (measure: StanceMeasure) => measureAt(truck, measure, travel);
  return {
    travel,
    lowerArmAngle,
    airSpringHeight: of("airSpringHeight"),
    lipHeight: of("lipHeight"),
    frameHeight: of("frameHeight"),
  };
}

/** One measure at a travel; null out of reach, or when the setup does not have what it is measured at. */
export function measureAt(truck: StandingTruck, measure: StanceMeasure, travel: number): number | null {
  const { setup, frontEnd } = truck;
  const pose = solveApart(frontEnd, { left: travel, right: travel }, 0);
  if (!pose.ok) return null;
  switch (measure) {
    case "travel":
      return travel;
    case "lowerArmAngle":
      return lowerArmAngle(frontEnd, pose.left.lowerBallJoint);
    case "airSpringHeight": {
      const { airSpring } = setup;
      return (
        airSpring &&
        (airMotion(frontEnd.left, airSpring.bodyMount, airSpring.armMount, travel)?.height ?? null)
      );
    }
    case "lipHeight":
      return overFloor(truck, pose, setup.floor?.lip ?? null);
    case "frameHeight":
      return overFloor(truck, pose, setup.floor?.frame ?? null);
  }
}

/** The angle of the line from the pivot axis to the ball joint: from the point of the axis straight across from it. */
function lowerArmAngle({ left }: FrontEnd, ballJoint: Vec3): number {
  const foot = vecAt(left.row, SIDE.lowerFoot);
  return Math.atan2(foot[2] - ballJoint[2], ballJoint[1] - foot[1]);
}

function overFloor({ setup, frontEnd }: StandingTruck, pose: ApartPose, point: Vec3 | null): number | null {
  const found = point && floorPlane(pose, loadedRadii(frontEnd), setup);
  return point && found && heightOver(found.plane, point);
}
