import { signedAngle } from "./settingFormat.ts";

/** rad. What reads as nothing at a hundredth of a degree. */
const NOTHING = (0.005 * Math.PI) / 180;

export interface LeftOverWords {
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
