import type { Setup } from "../../setup/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";

/** Shims and tie rods are set finer than a tape reads: to 1/64 in, or a hundredth of a millimeter. */
export function shimFormat({ units }: Setup): LengthFormat {
  return { units, fraction: 64, decimals: 2 };
}
