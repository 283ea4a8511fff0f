import { setAt } from "../../setup/reading/setAt.ts";
import { degFromRad } from "../../units/angle.ts";
import { type FileUnits, unitsFromMm } from "../../units/lengthUnits.ts";
import { plainLengthText } from "../../units/plainLengthText.ts";
import type { WindowField } from "./windowField.ts";

/** Longest text of a length that a person would write. */
const MOST_TEXT = 12;

/** Digits after the point of what nobody would write: far finer than anything is made. */
const DIGITS = 6;

/**
 * A copy of a document with a field at a value as a person would write it: a length as text, exact where that is short; all else to
 * a millionth of a unit or a degree. @param value mm or radians; @param units the file's
 */
export function writtenField(
  document: unknown,
  field: WindowField,
  value: number,
  units: FileUnits,
): unknown {
  return setAt(field.put(document, value), field.path, typedValue(field, value, units));
}

function typedValue({ kind }: WindowField, value: number, units: FileUnits): string | number {
  if (kind === "angle") return Number(degFromRad(value).toFixed(DIGITS));
  const text = plainLengthText(value, units);
  return text.length <= MOST_TEXT ? text : Number(unitsFromMm(value, units).toFixed(DIGITS));
}
