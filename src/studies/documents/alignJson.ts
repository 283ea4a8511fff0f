import type { LengthUnit, Setup } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { ThreadCallout } from "../../units/threadCallout.ts";
import type { SideAlignment, TruckAlignment, WheelReading } from "../alignment/alignSide.ts";
import { sleeveTurns } from "../alignment/straightAhead.ts";

/** An alignment as `align --json` prints it: lengths in the file's units, angles in degrees; null = none, or not asked. */
export function alignJson(
  alignment: TruckAlignment,
  units: LengthUnit,
  { sleeveThread }: Pick<Setup["alignment"], "sleeveThread">,
) {
  const { stance, travel, asked, reached, left, right } = alignment;
  return {
    units,
    stance,
    travel: unitsFromMm(travel, units),
    asked,
    reached,
    left: sideJson(left, units, sleeveThread),
    right: sideJson(right, units, sleeveThread),
  };
}

function sideJson(side: SideAlignment, units: LengthUnit, sleeve: ThreadCallout | undefined) {
  const length = (mm: number) => unitsFromMm(mm, units);
  const { targets, leftOver, tieRod } = side;
  return {
    reached: side.reached,
    targets: { camber: degrees(targets.camber), caster: degrees(targets.caster), toe: degrees(targets.toe) },
    settings: side.settings.map(({ name, asBolted, setting, exact, least, most, step }) => ({
      name,
      asBolted: length(asBolted),
      setting: length(setting),
      exact: exact === null ? null : length(exact),
      least: length(least),
      most: length(most),
      step: step === null ? null : length(step),
    })),
    tieRod: {
      asBolted: length(tieRod.asBolted),
      aligned: length(tieRod.aligned),
      change: length(tieRod.aligned - tieRod.asBolted),
      ...(sleeve ? { turns: sleeveTurns(tieRod.aligned - tieRod.asBolted, sleeve) } : {}),
    },
    asBolted: readingJson(side.asBolted),
    aligned: readingJson(side.aligned),
    leftOver: {
      camber: degrees(leftOver.camber),
      caster: degrees(leftOver.caster),
      toe: degrees(leftOver.toe),
    },
    sensitivities: side.sensitivities.map(({ name, per, camber, caster, toeUntilSet }) => ({
      name,
      per: length(per),
      camber: degFromRad(camber),
      caster: degFromRad(caster),
      toeUntilSet: degFromRad(toeUntilSet),
    })),
  };
}

function readingJson({ camber, caster, toe, kingpinInclination, casterSweep }: WheelReading) {
  return {
    camber: degFromRad(camber),
    caster: degFromRad(caster),
    toe: degFromRad(toe),
    kingpinInclination: degFromRad(kingpinInclination),
    casterSweep: casterSweep && {
      camberDifference: degFromRad(casterSweep.camberDifference),
      reading: degFromRad(casterSweep.reading),
      roundedReading: degFromRad(casterSweep.roundedReading),
      error: degFromRad(casterSweep.error),
    },
  };
}

function degrees(rad: number | null): number | null {
  return rad === null ? null : degFromRad(rad);
}
