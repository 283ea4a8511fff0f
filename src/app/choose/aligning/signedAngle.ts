import { angleText } from "../../../studies/wording/lengths.ts";

/** A change of an angle to a hundredth of a degree, with its sign; what reads as nothing has none. */
export function signedAngle(rad: number): string {
  const text = angleText(rad, 2);
  if (/^−?0\.00°$/.test(text)) return "0.00°";
  return rad > 0 ? `+${text}` : text;
}
