import type { Setup } from "../../setup/types.ts";
import { formatLength } from "../../units/formatLength.ts";
import { withMinus } from "./withMinus.ts";

/** A length in the setup's own units as a tape reads it: sixteenths of an inch, or tenths of a millimeter. */
export function lengthText(mm: number, setup: Setup): string {
  return withMinus(formatLength(mm, { units: setup.units, fraction: 16 }));
}
