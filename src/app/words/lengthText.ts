import type { Setup } from "../../setup/types.ts";
import { formatLength } from "../../units/formatLength.ts";

/** A length in the setup's own units as a tape reads it: sixteenths of an inch, or tenths of a millimeter. */
export function lengthText(mm: number, setup: Setup): string {
  return withMinus(formatLength(mm, { units: setup.units, fraction: 16 }));
}

/**
 * A length that is not zero and must not read as zero: "less than 1/16 in" rather than "0 in".
 * The sign is dropped; say in words which way it goes.
 */
export function amountText(mm: number, setup: Setup): string {
  const amount = Math.abs(mm);
  const finest = setup.units === "in" ? 25.4 / 16 : 0.1;
  if (amount > 0 && amount < finest / 2) return `less than ${lengthText(finest, setup)}`;
  return lengthText(amount, setup);
}

/** Puts a real minus sign where a hyphen stands for one. */
export function withMinus(text: string): string {
  return text.replace(/^-/, "−");
}
