import { angleText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";

/** rad. What reads as nothing at a hundredth of a degree. */
const NOTHING = (0.005 * Math.PI) / 180;

interface LeftOverWords {
  readonly amount: string;
  readonly words: string;
  /** Whether it is as it should be; null = nothing was asked. */
  readonly isGood: boolean | null;
}

/**
 * What an alignment leaves of one thing asked for: how much, and whether that is in range.
 * @param leftOver aligned − target, rad; null = not asked for @param reached the wheel can meet its targets in range
 */
export function leftOverWords(leftOver: number | null, reached: boolean): LeftOverWords {
  if (leftOver === null) return { amount: "–", words: "not asked for", isGood: null };
  const isMet = Math.abs(leftOver) < NOTHING;
  const amount = signedAngle(leftOver);
  if (isMet) return { amount, words: "met", isGood: true };
  return { amount, words: reached ? "in range" : "out of range", isGood: reached };
}

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
