import type { LengthUnit } from "../../setup/types.ts";
import type { GapEntry } from "../../studies/gapsAt.ts";
import type { SidePose, SolvedPose } from "../../suspension/solvePose.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { pointFromMm } from "./outputUnits.ts";

/** A pose and its gaps as `pose --json` prints them: lengths in the file's units, angles in degrees. */
export function poseJson(pose: SolvedPose, gaps: readonly GapEntry[], units: LengthUnit) {
  return {
    units,
    travel: unitsFromMm(pose.travel, units),
    steer: pose.steer,
    left: sideJson(pose.left, units),
    right: sideJson(pose.right, units),
    gaps: gaps.map(({ part, side, gap, point, together }) => ({
      part,
      side,
      gap: unitsFromMm(gap, units),
      point: pointFromMm(point, units),
      ...(together ? { ride: "together" } : {}),
    })),
  };
}

function sideJson(side: SidePose, units: LengthUnit) {
  return {
    wheelCenter: pointFromMm(side.wheelCenter, units),
    wheelAxis: side.wheelAxis,
    hubFace: pointFromMm(side.hubFace, units),
    upperBallJoint: pointFromMm(side.upperBallJoint, units),
    lowerBallJoint: pointFromMm(side.lowerBallJoint, units),
    tieRodOuter: pointFromMm(side.tieRodOuter, units),
    tieRodInner: pointFromMm(side.tieRodInner, units),
    contactPatch: pointFromMm(side.contactPatch, units),
    camber: degFromRad(side.camber),
    steerAngle: degFromRad(side.steerAngle),
    toe: degFromRad(side.toe),
    caster: degFromRad(side.caster),
    kingpinInclination: degFromRad(side.kingpinInclination),
    scrubRadius: unitsFromMm(side.scrubRadius, units),
    mechanicalTrail: unitsFromMm(side.mechanicalTrail, units),
    tieRodLength: unitsFromMm(side.tieRodLength, units),
  };
}
