import { angleText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";

/**
 * Shims and tie rods are set finer than a tape reads: fractions to 1/64 in, decimals to a thousandth, millimeters to a
 * hundredth. @param format in which lengths are shown
 */
export function settingFormat({ units, fraction }: LengthFormat): LengthFormat {
  if (units === "mm") return { units, decimals: 2 };
  return fraction === "decimal" ? { units, fraction, decimals: 3 } : { units, fraction: 64 };
}

/** A change of an angle to a hundredth of a degree, with its sign; what reads as nothing has none. */
export function signedAngle(rad: number): string {
  const text = angleText(rad, 2);
  if (/^−?0\.00°$/.test(text)) return "0.00°";
  return rad > 0 ? `+${text}` : text;
}
