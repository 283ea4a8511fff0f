import { evaluateLength } from "../../units/lengthExpression.ts";
import type { FileUnits } from "../../units/lengthUnits.ts";
import { parseLength } from "../../units/parseLength.ts";
import { parseNumber } from "../../units/parseNumber.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import { hasWithin, joinWithin, splitWithin } from "../../units/withinText.ts";
import { numberNature } from "../fields/fieldKinds.ts";
import type { SetupField } from "../fields/setupField.ts";
import { type NumberNature, withinOf } from "../reading/withinOf.ts";
import { withoutWithin } from "../takeWithin.ts";

/** A value fit for the file, or what is wrong with what was typed (one sentence without a full stop). */
export type ReadTyped =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly mend: string };

/**
 * Reads what a person typed into a field. Text of a length may be arithmetic; its result is written plainly. Text that is
 * a length already stays as typed, except that a bare number in other units than the file's gets its unit. After `±` it
 * may tell how well the number is known. Anything but text is only checked.
 * @param fileUnits the unit of bare lengths in the file
 * @param bareUnits the unit of bare lengths as typed: the one lengths are shown in
 */
export function readTyped(
  field: SetupField,
  typed: unknown,
  fileUnits: FileUnits,
  bareUnits: FileUnits = fileUnits,
): ReadTyped {
  const nature = typeof typed === "string" && hasWithin(typed) ? numberNature(field.schema) : null;
  if (nature !== null) return readWithin(field, nature, typed as string, fileUnits, bareUnits);
  const read =
    typeof typed === "string"
      ? readText(field, typed, fileUnits, bareUnits)
      : { ok: true as const, value: typed };
  if (!read.ok) return read;
  const checked = field.schema.safeParse(withoutWithin(field.schema, read.value));
  if (checked.success) return read;
  const mend = checked.error.issues[0]?.message ?? "is not understood";
  return { ok: false, mend: mend.includes("\n") ? "has a key that is not known here" : mend };
}

/** A value and its uncertainty, each read by itself. */
function readWithin(
  field: SetupField,
  nature: NumberNature,
  text: string,
  fileUnits: FileUnits,
  bareUnits: FileUnits,
): ReadTyped {
  const split = splitWithin(text)!;
  if (!split.ok) return split;
  const value = readTyped(field, split.value, fileUnits, bareUnits);
  if (!value.ok) return value;
  const within = readText(field, split.within, fileUnits, bareUnits);
  if (!within.ok) return { ok: false, mend: `after the ±: ${within.mend}` };
  const pair = { value: value.value as number | string, within: within.value as number | string };
  const read = withinOf(pair, nature, fileUnits, true);
  return read.ok ? { ok: true, value: joinWithin(pair.value, pair.within) } : read;
}

function readText(field: SetupField, text: string, fileUnits: FileUnits, bareUnits: FileUnits): ReadTyped {
  switch (field.kind) {
    case "length":
    case "signedLength":
      return readLengthText(text, fileUnits, bareUnits);
    case "angle":
    case "quantity":
      return { ok: true, value: plainNumber(text) ?? text };
    case "number": {
      return parseNumber(text);
    }
    case "text":
    case "choice":
      return { ok: true, value: text };
    default:
      return { ok: false, mend: "this takes no text; give its entries" };
  }
}

function readLengthText(text: string, fileUnits: FileUnits, bareUnits: FileUnits): ReadTyped {
  const asTyped = parseLength(text, bareUnits);
  if (!asTyped.ok) {
    const worked = evaluateLength(text, bareUnits);
    return worked.ok ? { ok: true, value: plainLengthText(worked.mm, fileUnits, bareUnits) } : worked;
  }
  const inFile = parseLength(text, fileUnits);
  if (inFile.ok && inFile.mm === asTyped.mm) return { ok: true, value: plainNumber(text) ?? text.trim() };
  const withUnit = `${text.trim()} ${bareUnits}`;
  const back = parseLength(withUnit, fileUnits);
  const value =
    back.ok && back.mm === asTyped.mm ? withUnit : plainLengthText(asTyped.mm, fileUnits, bareUnits);
  return { ok: true, value };
}

/** The number a text is, where the file would write it just so; null for any other text, such as `6.50`. */
function plainNumber(text: string): number | null {
  const trimmed = text.trim();
  return /^-?\d/.test(trimmed) && String(Number(trimmed)) === trimmed ? Number(trimmed) : null;
}
