import type { LengthUnit } from "../../setup/types/types.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";

/** A point in the file's units, full precision. @param point mm */
export function pointFromMm(
  point: readonly [number, number, number],
  units: LengthUnit,
): [number, number, number] {
  return [unitsFromMm(point[0], units), unitsFromMm(point[1], units), unitsFromMm(point[2], units)];
}
