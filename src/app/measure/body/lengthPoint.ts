import { type FileUnits, MM_PER_INCH } from "../../../units/lengthUnits.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import type { LengthStep } from "../../../units/stepLength.ts";
import type { SidePoint } from "./archGeometry.ts";

/** A point as the file holds it, in mm; null where a coordinate is none. */
export function pointInMm(typed: unknown, units: FileUnits): readonly [number, number, number] | null {
  if (!Array.isArray(typed)) return null;
  const [x, y, z] = typed.map((value: unknown) => {
    const length = typeof value === "number" || typeof value === "string" ? parseLength(value, units) : null;
    return length?.ok ? length.mm : null;
  });
  return x == null || y == null || z == null ? null : [x, y, z];
}

/** A point as the file holds it, put elsewhere in the side view: to whole steps, its y as typed. */
export function movedPoint(
  typed: unknown,
  to: SidePoint,
  step: LengthStep,
  units: FileUnits,
): readonly unknown[] {
  const y = Array.isArray(typed) ? typed[1] : 0;
  return [steppedText(to.x, step, units), y, steppedText(to.z, step, units)];
}

/** A length to the nearest whole step, as the file may hold it. */
export function steppedText(mm: number, step: LengthStep, units: FileUnits): string {
  const size = step.units === "in" ? step.size * MM_PER_INCH : step.size;
  return plainLengthText(Math.round(mm / size) * size, units, step.units);
}
