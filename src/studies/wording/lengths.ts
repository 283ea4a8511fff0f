import type { Setup } from "../../setup/types/types.ts";
import { formatAngle } from "../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { MM_PER_INCH } from "../../units/lengthUnits.ts";

/** The finest length a format shows, mm. */
export function finestLength(format: LengthFormat): number {
  if (format.units === "mm") return 10 ** -(format.decimals ?? 1);
  const { fraction = 16 } = format;
  return MM_PER_INCH * (fraction === "decimal" ? 10 ** -(format.decimals ?? 3) : 1 / fraction);
}

/** How long, mm, without the sign. What would round to nothing reads "less than 1/16 in": a light rub is a rub. */
export function amountWords(mm: number, format: LengthFormat): string {
  const finest = finestLength(format);
  const amount = Math.abs(mm);
  return amount < 0.5 * finest ? `less than ${formatLength(finest, format)}` : formatLength(amount, format);
}

/**
 * How long, without the sign, as a tape reads it, in the units shown. What would round to nothing reads
 * "less than 1/16 in", or "< 1/16 in" where there is little room.
 */
export function amountText(mm: number, format: LengthFormat, isShort = false): string {
  const words = amountWords(mm, format);
  return isShort ? words.replace("less than ", "< ") : words;
}

/** A length as a tape reads it, in the units shown. */
export function lengthText(mm: number, format: LengthFormat): string {
  return withMinus(formatLength(mm, format));
}

/** An angle in degrees to a tenth (or `decimals`), with a real minus sign. */
export function angleText(rad: number, decimals = 1): string {
  return withMinus(formatAngle(rad, decimals));
}

/** Puts a real minus sign where a hyphen stands for one. */
export function withMinus(text: string): string {
  return text.replace(/^-/, "−");
}

/** How a person is shown lengths: to the nearest 1/16 in, or to a tenth of a millimeter. */
export function formatOf({ units }: Pick<Setup, "units">): LengthFormat {
  return { units, fraction: 16 };
}

/** Shims and tie rods are set finer than a tape reads: to 1/64 in, or a hundredth of a millimeter. */
export function shimFormat({ units }: Pick<Setup, "units">): LengthFormat {
  return { units, fraction: 64, decimals: 2 };
}

/** mm, rad, share of lock. The two sides of a mirrored truck differ by rounding alone. */
const ROUNDING = 1e-6;

/** mm, rad. Two exact numbers this near each other read the same with any number of digits shown. */
const READ = 1e-4;

/** mm, rad. Two numbers that were searched for may differ by what the searches leave open. */
const FOUND = { length: 0.05, angle: 1e-3 } as const;

/** Whether both sides do the very same, rounding aside. */
export function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) < ROUNDING;
}

/** Whether two exact numbers read the same. */
export function readsAlike(a: number, b: number): boolean {
  return Math.abs(a - b) < READ;
}

/** Whether two numbers that were searched for are one to any tape or gauge. */
export function isFoundAlike(a: number, b: number, measure: keyof typeof FOUND): boolean {
  return Math.abs(a - b) < FOUND[measure];
}

/** Digits after the point where fractions hide a trend: as fine as a search is. */
const DECIMALS = { in: 3, mm: 2 } as const;

/**
 * The format in which numbers side by side tell that they differ: the one given, or decimals where two that differ read the same.
 * @param values mm @param text as one of them stands there
 */
export function tellingFormat(
  values: readonly number[],
  text: (value: number, format: LengthFormat) => string,
  format: LengthFormat,
): LengthFormat {
  const sorted = [...values].sort((a, b) => a - b);
  // The first of those that read alike: many small steps hide as much as a large one.
  let [first, read] = [Number.NaN, ""];
  const hides = sorted.some((value) => {
    const reads = text(value, format);
    if (reads !== read) [first, read] = [value, reads];
    return !isFoundAlike(value, first, "length");
  });
  return hides ? decimalFormat(format) : format;
}

/** Decimals as fine as a search is, in the units shown. */
export function decimalFormat({ units }: LengthFormat): LengthFormat {
  return { units, fraction: "decimal", decimals: DECIMALS[units] };
}
