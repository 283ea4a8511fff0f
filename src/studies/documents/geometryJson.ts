import type { LengthUnit } from "../../setup/types/types.ts";
import type { FrontViewPlace } from "../../suspension/rollCenter.ts";
import { degFromRad } from "../../units/angle.ts";
import { mmFromUnits, unitsFromMm } from "../../units/lengthUnits.ts";
import type { BumpSteer } from "../geometry/bumpSteer.ts";
import type { FlatTieRod } from "../geometry/flatTieRod.ts";
import type { GeometryReport, SteerRow, SteerSide, TravelSide } from "../geometry/geometryReport.ts";
import type { TurningCircle } from "../geometry/turningCircle.ts";

/**
 * The geometry as `geometry --json` prints it: lengths in the file's units, angles in degrees, gains in degrees per
 * unit of travel, ratios in degrees of wheel per degree of pitman arm or per unit of rack. null = no such number.
 */
export function geometryJson(report: GeometryReport, units: LengthUnit) {
  const length = (mm: number) => unitsFromMm(mm, units);
  const perLength = (rate: number) => degFromRad(rate) * mmFromUnits(1, units);
  const place = (at: FrontViewPlace | null) => at && { y: length(at.y), z: length(at.z) };
  const travelSide = (side: TravelSide | null) =>
    side && {
      camber: degFromRad(side.camber),
      camberGain: perLength(side.camberGain),
      toe: degFromRad(side.toe),
      toeGain: perLength(side.toeGain),
      instantCenter: place(side.instantCenter),
      swingArm: side.swingArm === null ? null : length(side.swingArm),
      scrubRadius: length(side.scrubRadius),
      mechanicalTrail: length(side.mechanicalTrail),
    };
  const steerSide = (side: SteerSide | null) =>
    side && {
      steerAngle: degFromRad(side.steerAngle),
      camber: degFromRad(side.camber),
      scrubRadius: length(side.scrubRadius),
      mechanicalTrail: length(side.mechanicalTrail),
    };
  const bump = (found: BumpSteer | null) =>
    found && {
      rms: degFromRad(found.rms),
      most: degFromRad(found.most.toeChange),
      mostAtTravel: length(found.most.travel),
      curve: found.curve.map(({ travel, toeChange }) => ({
        travel: length(travel),
        toeChange: degFromRad(toeChange),
      })),
    };
  const flat = (found: FlatTieRod | null) =>
    found && {
      move: length(found.move),
      height: length(found.height),
      rmsBefore: degFromRad(found.rmsBefore),
      rmsAfter: degFromRad(found.rmsAfter),
      mostAfter: degFromRad(found.mostAfter),
      atEndOfSearch: found.atEndOfSearch,
    };
  const turn = (found: TurningCircle | null) =>
    found && {
      contact: length(found.contact),
      curbToCurb: length(found.curbToCurb),
      wallToWall: length(found.wallToWall),
      wallBy: found.wallBy,
      centersApart: length(found.centersApart),
    };
  return {
    units,
    byTravel: report.byTravel.map((row) => ({
      travel: length(row.travel),
      rollCenter: row.rollCenter && { ...place(row.rollCenter), height: length(row.rollCenter.height) },
      left: travelSide(row.left),
      right: travelSide(row.right),
    })),
    bySteer: report.bySteer.map((row) => ({
      steer: row.steer,
      left: steerSide(row.left),
      right: steerSide(row.right),
      ackermann: ackermannJson(row),
      ratio: ratioJson(row, perLength),
      jacking: row.jacking && { rise: length(row.jacking.rise), roll: degFromRad(row.jacking.roll) },
    })),
    bumpSteer: { left: bump(report.bumpSteer.left), right: bump(report.bumpSteer.right) },
    flatTieRod: { inner: flat(report.flatInner), outer: flat(report.flatOuter) },
    turningCircle: { left: turn(report.turning.left), right: turn(report.turning.right) },
  };
}

function ackermannJson({ ackermann }: SteerRow) {
  return (
    ackermann && {
      percent: ackermann.percent,
      error: degFromRad(ackermann.error),
      inner: degFromRad(ackermann.inner),
      outer: degFromRad(ackermann.outer),
      idealOuter: degFromRad(ackermann.idealOuter),
    }
  );
}

function ratioJson({ ratio }: SteerRow, perLength: (rate: number) => number) {
  if (ratio === null) return null;
  const { type, left, right, mean } = ratio;
  if (type === "pitman") return { per: "degree of pitman arm", left, right, mean };
  return { per: "unit of rack", left: perLength(left), right: perLength(right), mean: perLength(mean) };
}
