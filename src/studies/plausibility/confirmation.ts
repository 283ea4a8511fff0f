import { keyText } from "../../setup/types/keyPath.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import type { UnusualCheck } from "../../setup/types/unusualChecks.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { Unusual } from "./unusual.ts";

/** An entry of the setup's `confirmed`, as the file writes it: lengths in its units, angles in degrees. */
export interface Confirmation {
  readonly check: UnusualCheck;
  readonly at: string;
  readonly length?: number;
  readonly angle?: number;
}

/** What a setup says when somebody has looked at an unusual value again and it is so. */
export function confirmationOf({ check, paths, kind, value }: Unusual, units: LengthUnit): Confirmation {
  const at = keyText(paths[0]);
  return kind === "length"
    ? { check, at, length: rounded(unitsFromMm(value, units), units === "in" ? 4 : 3) }
    : { check, at, angle: rounded(degFromRad(value), 3) };
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}
