import type { Setup } from "../../setup/types/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";

/** How a person is shown lengths: to the nearest 1/16 in, or to a tenth of a millimeter. */
export function formatOf({ units }: Pick<Setup, "units">): LengthFormat {
  return { units, fraction: 16 };
}

/** Shims and tie rods are set finer than a tape reads: to 1/64 in, or a hundredth of a millimeter. */
export function shimFormat({ units }: Pick<Setup, "units">): LengthFormat {
  return { units, fraction: 64, decimals: 2 };
}
