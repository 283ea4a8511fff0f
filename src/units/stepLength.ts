import { type FileUnits, MM_PER_INCH } from "./lengthUnits.ts";
import { parseLength } from "./parseLength.ts";
import { plainLengthText } from "./plainLengthText.ts";

/** How far one step of a length goes: `size` in `units`, such as 1/16 in or 0.5 mm. */
export interface LengthStep {
  readonly units: FileUnits;
  readonly size: number;
}

/** Steps. A value this near a whole step stands on it; what is typed in the other unit never lands exactly. */
const ON_STEP = 1e-6;

/**
 * A length as typed, moved to the next whole step in a direction, as plain text in the step's unit; from between two
 * steps to the nearer end of the two, so that a stepped length always reads as a round one.
 * @param direction +1 or −1
 * @param count how many steps, 1 or more
 * @returns null when what stands there is no length
 */
export function stepLength(
  value: number | string,
  direction: 1 | -1,
  step: LengthStep,
  fileUnits: FileUnits,
  count = 1,
): string | null {
  const typed = parseLength(value, fileUnits);
  if (!typed.ok) return null;
  const stepMm = step.units === "in" ? step.size * MM_PER_INCH : step.size;
  return plainLengthText(stepTo(typed.mm, stepMm, direction, count), fileUnits, step.units);
}

/**
 * The next whole step in a direction: from between two steps it goes to the nearer end of the two, so that a
 * stepped value always reads as a round one. @param way −1 or +1; @param count how many steps
 */
export function stepTo(value: number, step: number, way: 1 | -1, count = 1): number {
  const at = value / step;
  const nearest = Math.round(at);
  const from = Math.abs(at - nearest) < ON_STEP ? nearest : way > 0 ? Math.floor(at) : Math.ceil(at);
  return (from + way * count) * step;
}
