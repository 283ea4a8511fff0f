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

/**
 * A measurement's text in plain characters with points for its decimal commas; what is empty, too long or has a comma that
 * cannot be read is refused. @param example of what would be right
 */
export function readableText(text: string, example: string): WithPoints {
  if (text.trim() === "") return { ok: false, mend: `empty; ${example}` };
  if (text.length > MAX_MEASURE_TEXT)
    return { ok: false, mend: `longer than ${MAX_MEASURE_TEXT} characters; ${example}` };
  const points = withDecimalPoints(text);
  return points.ok ? { ok: true, text: plainMeasureText(points.text) } : points;
}

/** Text with points for its decimal commas, or why a comma in it cannot be read (one sentence without a full stop). */
export type WithPoints =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly mend: string };

/** Digits, points and commas in a row. */
const RUN = /[\d.,]*\d[\d.,]*/g;

/**
 * Takes a comma for the decimal point it is where nothing else can be meant: `383,0`, `0,125`, `,5`. Three digits after
 * it could be thousands (`1,234`), so that is refused with both readings; and so is every thousands separator.
 */
export function withDecimalPoints(text: string): WithPoints {
  if (!text.includes(",")) return { ok: true, text };
  let mend: string | null = null;
  const read = text.replace(RUN, (run) => {
    const found = readRun(run);
    if (!found.ok) mend ??= found.mend;
    return found.ok ? found.text : run;
  });
  return mend === null ? { ok: true, text: read } : { ok: false, mend };
}

function readRun(run: string): WithPoints {
  if (!run.includes(",")) return { ok: true, text: run };
  if (/^[1-9]\d{0,2},\d{3}$/.test(run)) {
    const [point, none] = [run.replace(",", "."), run.replace(",", "")];
    return { ok: false, mend: `has a comma that can be read two ways; write ${point} or ${none}` };
  }
  if (/^\d*,\d+$/.test(run)) return { ok: true, text: run.replace(",", ".") };
  const plain = /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(run)
    ? run.replaceAll(",", "")
    : /^\d{1,3}(?:\.\d{3})+,\d+$/.test(run)
      ? run.replaceAll(".", "").replace(",", ".")
      : null;
  const instead = plain === null ? "a decimal point and no thousands separator" : plain;
  return { ok: false, mend: `has a comma; write ${instead}` };
}
