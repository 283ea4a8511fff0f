import type { WindowField } from "../../../studies/window/windowField.ts";
import { withMinus } from "../../../studies/wording/lengths.ts";
import { degFromRad, parseAngle, radFromDeg } from "../../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../../units/formatLength.ts";
import { evaluateLength } from "../../../units/lengthExpression.ts";
import { type FileUnits, MM_PER_INCH } from "../../../units/lengthUnits.ts";

type Kind = Pick<WindowField, "kind">;

/** Half of what is looked over when nobody says: mm, rad. */
const HALF = { length: 0.5 * MM_PER_INCH, angle: radFromDeg(2) } as const;

/** A value as typed, mm or radians; null = not understood. */
export function fieldEnd({ kind }: Kind, text: string, units: FileUnits): number | null {
  if (kind === "angle") {
    const angle = parseAngle(text);
    return angle.ok ? angle.rad : null;
  }
  const length = evaluateLength(text, units);
  return length.ok ? length.mm : null;
}

/** A value as it is read. @param value mm or radians */
export function fieldEndText({ kind }: Kind, value: number, format: LengthFormat): string {
  return withMinus(
    kind === "angle" ? `${Number(degFromRad(value).toFixed(2))}°` : formatLength(value, format),
  );
}

/** A value as it is typed. */
export function typedText(kind: Kind, value: number, format: LengthFormat): string {
  return fieldEndText(kind, value, format)
    .replace("−", "-")
    .replace(/ (in|mm)$/, "");
}

/**
 * Ends to begin with: a little to both sides of what stands there now, as far as the file may say it.
 * @param times as far as half an inch or two degrees
 */
export function fieldStart(
  field: WindowField,
  format: LengthFormat,
  times = 1,
): readonly [from: string, to: string] {
  const { kind, now, least, most } = field;
  const reach = times * HALF[kind];
  return [
    typedText(field, Math.max(now - reach, least), format),
    typedText(field, Math.min(now + reach, most), format),
  ];
}
