import { type FileUnits, MM_PER_INCH } from "../../units/lengthUnits.ts";

/** In the units shown: where the second and third band of distance end. */
const ROUND: Readonly<Record<FileUnits, readonly number[]>> = {
  in: [MM_PER_INCH, 3 * MM_PER_INCH],
  mm: [25, 75],
};

/** Where bands of distance to the body end, mm, rising: the allowance, then round numbers well above it. */
export function bandEdges(allowance: number, units: FileUnits): number[] {
  return [allowance, ...ROUND[units].filter((edge) => edge > 1.5 * allowance)].filter((edge) => edge > 0);
}
