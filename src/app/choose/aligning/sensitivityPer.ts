import { MM_PER_INCH } from "../../../units/lengthUnits.ts";
import type { LengthDisplay } from "../../state/preferences.ts";

/** How much shim is told of, mm, where a person chose how lengths are shown. */
const CHOSEN: Readonly<Record<Exclude<LengthDisplay, "file">, number>> = {
  "1/16": MM_PER_INCH / 16,
  "1/32": MM_PER_INCH / 32,
  "1/64": MM_PER_INCH / 64,
  decimal: MM_PER_INCH / 100,
  mm: 1,
};

/** Of how much more shim its effect is told, mm: the fraction chosen, else `otherwise`, 1/32 in or 1 mm by the file. */
export function sensitivityPer(lengths: LengthDisplay, otherwise: number): number {
  return lengths === "file" ? otherwise : CHOSEN[lengths];
}
