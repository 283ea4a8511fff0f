import type { LengthUnit, Setup } from "../../setup/types.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";

/** A point in the file's units, full precision. @param point mm */
export function pointFromMm(
  point: readonly [number, number, number],
  units: LengthUnit,
): [number, number, number] {
  return [unitsFromMm(point[0], units), unitsFromMm(point[1], units), unitsFromMm(point[2], units)];
}

/** How a person is shown lengths: to the nearest 1/16 in, or to a tenth of a millimeter. */
export function formatOf(setup: Setup): LengthFormat {
  return { units: setup.units, fraction: 16 };
}
