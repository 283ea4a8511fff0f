import type { StanceMeasure } from "../../../setup/types/floorTypes.ts";
import { angleText, lengthText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";

/** A stance's measure with its unit. @param value mm, or radians of the lower arm's angle */
export function measureText(measure: StanceMeasure, value: number, format: LengthFormat): string {
  return measure === "lowerArmAngle" ? angleText(value, 1) : lengthText(value, format);
}
