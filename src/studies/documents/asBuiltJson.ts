import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { AsBuiltReport, AsBuiltSide, ReadingPass } from "../jig/asBuiltReport.ts";
import type { AsBuiltTruck, TruckNumbers, WheelEffect } from "../jig/asBuiltTruck.ts";
import type { FittedKnuckle } from "../jig/fitKnuckle.ts";
import type { JigRow, JigSheet } from "../jig/jigSheet.ts";
import type { ShimAnswer } from "../jig/shimsFor.ts";
import type { WheelNumbers } from "../jig/wheelNumbers.ts";
import type { WheelWithin } from "../jig/wheelWithin.ts";
import { entryJson } from "./checkJson.ts";
import { pointFromMm } from "./documentText.ts";

const SIDES = ["left", "right"] as const;

/**
 * An as-built check as `asbuilt --json` prints it: lengths in the file's units, angles in degrees. `knuckle` and `within`
 * (one standard deviation) by side, null where nothing was read; null inside `within` = left open, taken as ordered;
 * `cutShort` only where the budget ended a check.
 */
export function asBuiltJson({ sides, onTheTruck, cutShort }: AsBuiltReport, { units }: Setup) {
  const read = SIDES.flatMap((side) => sides[side] ?? []);
  const bySide = <T>(of: (side: AsBuiltSide) => T) => ({
    left: sides.left && of(sides.left),
    right: sides.right && of(sides.right),
  });
  return {
    units,
    passed: read.every(({ allPass }) => allPass),
    knuckle: bySide(({ fit }) => knuckleJson(fit, units)),
    within: bySide(({ fit }) => withinJson(fit, units)),
    missing: bySide(({ fit }) => fit.missing),
    residuals: read.flatMap(({ side, fit }) =>
      fit.residuals.map(({ key, is, off, inSigmas, isSuspect }) => ({
        side,
        reading: key,
        is: ofReading(key, is, units),
        off: ofReading(key, off, units),
        inSigmas,
        suspect: isSuspect,
      })),
    ),
    passes: read.flatMap(({ side, passes }) => passes.map((pass) => passJson(side, pass, units))),
    onTheTruck: onTheTruck.ok ? truckJson(onTheTruck, units) : null,
    ...(cutShort ? { cutShort } : {}),
  };
}

/** The jig sheet as `asbuilt --jig --json` prints it. */
export function jigJson(sheet: JigSheet, units: LengthUnit) {
  const length = (mm: number) => unitsFromMm(mm, units);
  const { offHeight } = sheet;
  return {
    units,
    clampAt: length(sheet.clampAt),
    faceAt: length(sheet.faceAt),
    halfLength: length(sheet.halfLength),
    jointHeight: length(sheet.jointHeight),
    pinEnd: length(sheet.pinEnd),
    toe: degFromRad(sheet.knuckle.toe),
    drop: sheet.drop === null ? null : length(sheet.drop),
    readings: sheet.rows.map(({ key, measure, mustRead, tolerance, isCheck }) => ({
      reading: key,
      measure,
      mustRead: ofReading(key, mustRead, units),
      tolerance: ofReading(key, tolerance, units),
      checks: isCheck,
    })),
    offHeight: {
      by: length(offHeight.by),
      costs: length(offHeight.costs),
      costsLevel: length(offHeight.costsLevel),
    },
  };
}

function ofReading(key: JigRow["key"], value: number, units: LengthUnit): number {
  return key === "faceAngle" ? degFromRad(value) : unitsFromMm(value, units);
}

function knuckleJson({ knuckle }: FittedKnuckle, units: LengthUnit) {
  const { span, pinHeight, pinLead, pinAngle, hubFace, steeringArm, toe } = knuckle;
  const length = (mm: number) => unitsFromMm(mm, units);
  return {
    span: length(span),
    pinHeight: length(pinHeight),
    pinLead: length(pinLead),
    pinAngle: degFromRad(pinAngle),
    hubFace: length(hubFace),
    steeringArm: pointFromMm(steeringArm, units),
    toe: degFromRad(toe),
  };
}

function withinJson({ within }: FittedKnuckle, units: LengthUnit) {
  const length = (mm: number | null) => (mm === null ? null : unitsFromMm(mm, units));
  const angle = (rad: number | null) => (rad === null ? null : degFromRad(rad));
  return {
    span: length(within.span),
    pinHeight: length(within.pinHeight),
    pinLead: length(within.pinLead),
    pinAngle: angle(within.pinAngle),
    hubFace: length(within.hubFace),
    steeringArm: [length(within.armX), length(within.armY), length(within.armZ)],
    toe: angle(within.toe),
  };
}

function passJson(side: "left" | "right", pass: ReadingPass, units: LengthUnit) {
  const { key, mustRead, is, off, tolerance, passes } = pass;
  const value = (of: number) => ofReading(key, of, units);
  return {
    side,
    reading: key,
    mustRead: value(mustRead),
    is: value(is),
    off: value(off),
    tolerance: value(tolerance),
    passes,
  };
}

function truckJson(truck: AsBuiltTruck, units: LengthUnit) {
  const { worstGap } = truck.within;
  return {
    toe: degFromRad(truck.toe),
    asOrdered: numbersJson(truck.asOrdered, units),
    asBuilt: numbersJson(truck.asBuilt, units),
    left: effectJson(truck.effects.left, units),
    right: effectJson(truck.effects.right, units),
    within: {
      track: truck.within.track === null ? null : unitsFromMm(truck.within.track, units),
      worstGap: worstGap && unitsFromMm(worstGap.sigma, units),
      ...(worstGap?.other ? { nearestToo: worstGap.other } : {}),
    },
  };
}

function numbersJson({ left, right, track, check }: TruckNumbers, units: LengthUnit) {
  return {
    left: wheelJson(left, units),
    right: wheelJson(right, units),
    track: unitsFromMm(track, units),
    verdict: check.verdict,
    worst: check.worst === null ? null : entryJson(check.worst, units),
    ...(check.cutShort ? { cutShort: true } : {}),
  };
}

function wheelJson(wheel: WheelNumbers, units: LengthUnit) {
  const { bumpSteer } = wheel;
  return {
    camber: degFromRad(wheel.camber),
    caster: degFromRad(wheel.caster),
    kingpinInclination: degFromRad(wheel.kingpinInclination),
    scrubRadius: unitsFromMm(wheel.scrubRadius, units),
    halfTrack: unitsFromMm(wheel.halfTrack, units),
    tieRodLength: unitsFromMm(wheel.tieRod, units),
    bumpSteer: bumpSteer && {
      most: degFromRad(bumpSteer.most.toeChange),
      atTravel: unitsFromMm(bumpSteer.most.travel, units),
      rms: degFromRad(bumpSteer.rms),
    },
  };
}

function wheelWithinJson(within: WheelWithin, units: LengthUnit) {
  const length = (mm: number | null) => (mm === null ? null : unitsFromMm(mm, units));
  const angle = (rad: number | null) => (rad === null ? null : degFromRad(rad));
  return {
    camber: angle(within.camber),
    caster: angle(within.caster),
    kingpinInclination: angle(within.kingpinInclination),
    scrubRadius: length(within.scrubRadius),
    halfTrack: length(within.halfTrack),
    tieRodLength: length(within.tieRod),
    toeAsBolted: angle(within.toeAsBolted),
    bumpSteer: { most: angle(within.bumpSteerMost), rms: angle(within.bumpSteerRms) },
  };
}

function effectJson({ toeAsBolted, tieRodChange, shims, within }: WheelEffect, units: LengthUnit) {
  return {
    toeAsBolted: toeAsBolted === null ? null : degFromRad(toeAsBolted),
    tieRodChange: unitsFromMm(tieRodChange, units),
    shims: shimsJson(shims, units),
    within: within && wheelWithinJson(within, units),
  };
}

function shimsJson(shims: ShimAnswer, units: LengthUnit) {
  if (shims.kind !== "set") return { answer: shims.kind };
  const { reached, settings, leftOver } = shims;
  return {
    answer: shims.kind,
    reached,
    settings: settings.map(({ name, asBolted, setting }) => ({
      name,
      asBolted: unitsFromMm(asBolted, units),
      setting: unitsFromMm(setting, units),
    })),
    leftOver: { camber: degFromRad(leftOver.camber), caster: degFromRad(leftOver.caster) },
  };
}
