import { lockText } from "../../studies/wording/poseText.ts";
import { withMinus } from "../../studies/wording/withMinus.ts";
import { degFromRad, formatAngle, radFromDeg } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import type { Measure } from "./plotTypes.ts";

export const angleFromDegrees = radFromDeg;

/** A plot's number as it is read out, with its unit. */
export function readText(value: number, measure: Measure, format: LengthFormat): string {
  if (measure === "angle") return withMinus(formatAngle(value, 2));
  if (measure === "lock") return lockText(value);
  return withMinus(formatLength(value, format));
}

/** The same as short as a scale's tick allows: no unit, it stands at the scale's name. */
export function tickText(value: number, measure: Measure, format: LengthFormat): string {
  if (measure === "angle") return withMinus(String(Number(degFromRad(value).toFixed(3))));
  if (measure === "lock") {
    const percent = Math.round(100 * value);
    return percent === 0 ? "0" : `${Math.abs(percent)} ${percent > 0 ? "L" : "R"}`;
  }
  return withMinus(formatLength(value, format).replace(/ (in|mm)$/, ""));
}

/** The unit at a scale's name. */
export function unitText(measure: Measure, format: LengthFormat): string {
  if (measure === "angle") return "°";
  return measure === "lock" ? "% of lock" : format.units;
}
