import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { withMinus } from "./withMinus.ts";

/** A length as a tape reads it, in the units shown. */
export function lengthText(mm: number, format: LengthFormat): string {
  return withMinus(formatLength(mm, format));
}
