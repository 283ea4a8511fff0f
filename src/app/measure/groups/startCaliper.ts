import type { Setup } from "../../../setup/types/types.ts";
import { type FileUnits, MM_PER_INCH, mmFromInches } from "../../../units/lengthUnits.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";

/** mm. A caliper with its bracket, about as large as most (common practice, no source); to be measured. */
const SIZE = { along: mmFromInches(3), across: mmFromInches(4), high: mmFromInches(6) } as const;

/** A caliper to start from, as the file holds it: behind the pin, from the hub face inward, inside the barrel. */
export function startCaliper({ wheel }: Setup, units: FileUnits): object {
  const grid = units === "in" ? MM_PER_INCH / 16 : 1;
  const text = (mm: number) => plainLengthText(Math.round(mm / grid) * grid, units);
  // Its outer corner stays an inch inside the barrel.
  const half = SIZE.high / 2;
  const reach = Math.sqrt(Math.max(0, (wheel.barrelDiameter / 2 - MM_PER_INCH) ** 2 - half ** 2));
  return {
    frame: "hub",
    min: [text(-reach), text(-SIZE.across - MM_PER_INCH), text(-half)],
    max: [text(SIZE.along - reach), text(-MM_PER_INCH), text(half)],
  };
}
