import type { BuiltKnuckle } from "../../../studies/jig/jigReadings.ts";
import { degFromRad } from "../../../units/angle.ts";
import { type FileUnits, unitsFromMm } from "../../../units/lengthUnits.ts";

/** Digits kept behind the point: a hundredth of what any reading is good to. */
const DIGITS = { in: 4, mm: 3, deg: 3 } as const;

/** A knuckle as built as the file's `knuckle` block holds it; toe stands in where its steering arm is. */
export function builtKnuckleValue(
  { span, pinHeight, pinAngle, pinLead, hubFace, steeringArm }: BuiltKnuckle,
  units: FileUnits,
) {
  const length = (mm: number) => Number(unitsFromMm(mm, units).toFixed(DIGITS[units])) + 0;
  return {
    span: length(span),
    pinHeight: length(pinHeight),
    pinAngle: Number(degFromRad(pinAngle).toFixed(DIGITS.deg)) + 0,
    pinLead: length(pinLead),
    hubFace: length(hubFace),
    steeringArm: steeringArm.map(length),
  };
}
