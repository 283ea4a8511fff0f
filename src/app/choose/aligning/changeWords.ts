import { amountText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";

/** mm. Less is nothing to be set. */
const NOTHING = 0.005;

/** What is to be done to come from one length to another: `add 1/32 in`; "as it is" when there is nothing to do. */
export function changeWords(
  change: number,
  [more, less]: readonly [more: string, less: string],
  format: LengthFormat,
): string {
  if (Math.abs(change) < NOTHING) return "as it is";
  return `${change > 0 ? more : less} ${amountText(change, format)}`;
}
