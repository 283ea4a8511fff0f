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
