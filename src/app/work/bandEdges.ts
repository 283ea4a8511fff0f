import { ENVELOPE_PRESETS } from "../../studies/envelope/presets.ts";
import { type FileUnits, MM_PER_INCH } from "../../units/lengthUnits.ts";

/** In the units shown: where the second and third band of distance end. */
const ROUND: Readonly<Record<FileUnits, readonly number[]>> = {
  in: [MM_PER_INCH, 3 * MM_PER_INCH],
  mm: [25, 75],
};

/** mm. As near as this to the body a surface drawn within it may rub. */
export const MAY_RUB = ENVELOPE_PRESETS.preview.outside;

/**
 * Where bands of distance to the body end, mm, rising: what may rub or is nearer than the allowance, then round numbers well above.
 */
export function bandEdges(allowance: number, units: FileUnits): number[] {
  const first = Math.max(allowance, MAY_RUB);
  return [first, ...ROUND[units].filter((edge) => edge > 1.5 * first)];
}
