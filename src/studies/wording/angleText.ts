import { formatAngle } from "../../units/angle.ts";
import { withMinus } from "./withMinus.ts";

/** An angle in degrees to a tenth (or `decimals`), with a real minus sign. */
export function angleText(rad: number, decimals = 1): string {
  return withMinus(formatAngle(rad, decimals));
}
