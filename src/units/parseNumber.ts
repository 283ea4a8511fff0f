import { withDecimalPoints } from "./decimalComma.ts";
import { MAX_MEASURE_TEXT, plainMeasureText, readMeasureNumber } from "./measureText.ts";

/** A plain number, or what is wrong with the text and what would be right (no full stop). */
export type ParsedNumber =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly mend: string };

const EXAMPLE = "write a number such as 0.25 or 4";

/** Reads a number that has no unit as people and programs write it: `4`, `383.0`, `.5`, `+3`, `1e3`, `0,25`, `1/4`. Never throws. */
export function parseNumber(text: string): ParsedNumber {
  if (text.length > MAX_MEASURE_TEXT)
    return { ok: false, mend: `longer than ${MAX_MEASURE_TEXT} characters; ${EXAMPLE}` };
  const points = withDecimalPoints(text);
  if (!points.ok) return points;
  const plain = plainMeasureText(points.text);
  const number = readMeasureNumber(plain, /^[+-]? ?/.exec(plain)![0].length);
  if (!number.ok || number.end < plain.length)
    return { ok: false, mend: number.ok || number.mend === "no number found" ? EXAMPLE : number.mend };
  return { ok: true, value: (plain.startsWith("-") ? -number.value : number.value) + 0 };
}
