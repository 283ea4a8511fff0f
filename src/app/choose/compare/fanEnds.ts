import type { SetupField } from "../../../setup/fields/setupField.ts";
import type { Setup } from "../../../setup/types/types.ts";
import { withMinus } from "../../../studies/wording/lengths.ts";
import { degFromRad, parseAngle } from "../../../units/angle.ts";
import { formatLength, type LengthFormat } from "../../../units/formatLength.ts";
import { evaluateLength } from "../../../units/lengthExpression.ts";
import { type FileUnits, MM_PER_INCH } from "../../../units/lengthUnits.ts";

/** Half of what a fan spans when nobody says: degrees, mm. */
const HALF_ANGLE_DEG = 2;
const HALF_LENGTH = 0.5 * MM_PER_INCH;

/** An end of a fan as typed: mm of a length, degrees of an angle; null = not understood. */
export function fanEnd({ kind }: SetupField, text: string, units: FileUnits): number | null {
  if (kind === "angle") {
    const angle = parseAngle(text);
    return angle.ok ? degFromRad(angle.rad) : null;
  }
  const length = evaluateLength(text, units);
  return length.ok ? length.mm : null;
}

/** A fan's value as it is read. */
export function fanEndText({ kind }: SetupField, value: number, format: LengthFormat): string {
  if (kind === "angle") return withMinus(`${Number(value.toFixed(2))}°`);
  return withMinus(formatLength(value, format));
}

/** Ends that make a first fan: a little to both sides of what stands there now. */
export function fanStart(
  field: SetupField,
  setup: Setup,
  format: LengthFormat,
): readonly [from: string, to: string] {
  const now = valueNow(field, setup);
  const half = field.kind === "angle" ? HALF_ANGLE_DEG : HALF_LENGTH;
  const least = field.range.least ?? Number.NEGATIVE_INFINITY;
  const text = (value: number) =>
    fanEndText(field, value, format)
      .replace("−", "-")
      .replace(/ (in|mm)$/, "");
  return [text(Math.max(now - half, least)), text(now + half)];
}

/** What the field stands for in the setup: mm, or degrees. 0 where the setup keeps it under another name. */
function valueNow({ pattern, kind }: SetupField, setup: Setup): number {
  let value: unknown = setup;
  for (const key of pattern) value = (value as Record<string, unknown> | null | undefined)?.[key];
  if (typeof value !== "number") return 0;
  return kind === "angle" ? degFromRad(value) : value;
}
