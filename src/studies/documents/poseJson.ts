import type { LengthUnit } from "../../setup/types/types.ts";
import type { Alignment } from "../../suspension/alignment.ts";
import type { ApartPose, SidePose, SolvedPose } from "../../suspension/solvePose.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import { limitsAtPose, limitsPastAt } from "../limits/limitsPastAt.ts";
import type { Model } from "../model/model.ts";
import type { GapEntry } from "../reports/gapsAt.ts";
import type { FloorPose } from "../stances/floorPose.ts";
import { pointFromMm } from "./documentText.ts";
import { floorPoseJson } from "./floorJson.ts";
import { limitMarginJson } from "./limitsJson.ts";

/**
 * A pose and its gaps as `pose --json` prints them: lengths in the file's units, angles in degrees; with wheels at
 * travels of their own `travels` in place of `travel`; `limitsPassed` as the text tells them, each side by itself. @param floor the floor under it, where it was asked for
 */
export function poseJson(
  pose: SolvedPose | ApartPose,
  gaps: readonly GapEntry[],
  model: Model,
  floor: FloorPose | null = null,
) {
  const { units } = model.setup;
  const limits = limitsAtPose(model, pose);
  return {
    units,
    ...heightJson(pose, units),
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
    // As in `check`: only when the setup gives limits.
    ...(limits.ok && limits.margins.length > 0
      ? { limitsPassed: limitsPastAt(limits).map((limit) => limitMarginJson(limit, units)) }
      : {}),
    ...(floor === null ? {} : { floor: floorPoseJson(floor, units) }),
  };
}

function heightJson(pose: SolvedPose | ApartPose, units: LengthUnit) {
  if ("travel" in pose) return { travel: unitsFromMm(pose.travel, units) };
  const { left, right } = pose.travels;
  return { travels: { left: unitsFromMm(left, units), right: unitsFromMm(right, units) } };
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
    ...wheelJson(side, units),
    tieRodLength: unitsFromMm(side.tieRodLength, units),
  };
}

/** How a wheel stands: degrees and the file's units. */
export function wheelJson(wheel: Alignment, units: LengthUnit) {
  return {
    camber: degFromRad(wheel.camber),
    steerAngle: degFromRad(wheel.steerAngle),
    toe: degFromRad(wheel.toe),
    caster: degFromRad(wheel.caster),
    kingpinInclination: degFromRad(wheel.kingpinInclination),
    scrubRadius: unitsFromMm(wheel.scrubRadius, units),
    mechanicalTrail: unitsFromMm(wheel.mechanicalTrail, units),
  };
}
