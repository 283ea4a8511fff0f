import type { LengthUnit, Setup } from "../../setup/types.ts";
import { lengthText } from "./lengthText.ts";

/** The finest length shown, mm. */
const FINEST: Readonly<Record<LengthUnit, number>> = { in: 25.4 / 16, mm: 0.1 };

/**
 * How long, without the sign (words say which way it goes). What is not zero must not read as zero: less than
 * half of the finest mark reads "less than 1/16 in", or "< 1/16 in" where there is little room.
 */
export function amountText(mm: number, setup: Setup, isShort = false): string {
  const amount = Math.abs(mm);
  const finest = FINEST[setup.units];
  if (amount === 0 || amount >= 0.5 * finest) return lengthText(amount, setup);
  return `${isShort ? "<" : "less than"} ${lengthText(finest, setup)}`;
}
