import {
  type FileUnits,
  findLengthUnit,
  LENGTH_UNITS,
  type LengthUnitNames,
  mmFromInches,
  mmFromUnits,
} from "./lengthUnits.ts";
import { readMeasureNumber } from "./measureText.ts";
import { readableText } from "./parseNumber.ts";
import { nearestWord } from "./words.ts";

/** A length in mm, or what is wrong with the text and what would be right (no full stop). */
export type ParsedLength =
  | { readonly ok: true; readonly mm: number }
  | { readonly ok: false; readonly mend: string };

const EXAMPLE = "write a length such as 5 5/8, 5.625 in or 142.9 mm";

/**
 * Reads a length the way people write it. A bare number, or text without a unit, is in `fileUnits`.
 * Text: `5 5/8`, `5-5/8"`, `5.625 in`, `142.9mm`, `5'`, `5' 3 1/4"`, `5 ft 3 in`, `5⅝`; a sign in front counts for
 * all of it (`-1 1/2` = −1.5). Anything that could be read two ways is refused. Never throws.
 */
export function parseLength(text: string | number, fileUnits: FileUnits): ParsedLength {
  if (typeof text === "number") {
    const mm = mmFromUnits(text, fileUnits);
    return Number.isFinite(mm) ? { ok: true, mm: mm + 0 } : refuse("must be a finite number"); // + 0 turns −0 into 0
  }
  if (typeof text !== "string") return refuse(EXAMPLE);
  const readable = readableText(text, EXAMPLE);
  if (!readable.ok) return readable;
  const plain = readable.text;
  const sign = plain.startsWith("-") ? -1 : 1;
  const start = /^[+-]? ?/.exec(plain)![0].length;

  const first = readLengthTerm(plain, start, fileUnits);
  if (!first.ok) return first;
  let mm = first.mm;
  if (first.end < plain.length) {
    const inches = readInchesAfterFeet(plain, first);
    if (!inches.ok) return inches;
    mm += inches.mm;
  }
  if (!Number.isFinite(mm)) return refuse("the number is too large");
  return { ok: true, mm: sign * mm + 0 };
}

/** One number with the unit after it, read out of a longer text; or what is wrong with it. */
export type LengthTerm =
  | {
      readonly ok: true;
      readonly mm: number;
      readonly end: number;
      readonly unit: LengthUnitNames["short"] | null;
      readonly value: number;
      readonly whole: boolean;
    }
  | { readonly ok: false; readonly mend: string };

/** One number at `start` of plain text and the unit after it, if any (`unit` null = none, read in `bareUnits`). */
export function readLengthTerm(plain: string, start: number, bareUnits: FileUnits): LengthTerm {
  const number = readMeasureNumber(plain, start);
  if (!number.ok)
    return refuse(number.mend === "no number found" ? `no number found; ${EXAMPLE}` : number.mend);
  const { value, whole } = number;
  const name = /^ ?(["']|[^\d\s"'+\-./*()]+\.?)?/.exec(plain.slice(number.end))!;
  if (name[1] === undefined) {
    return { ok: true, mm: mmFromUnits(value, bareUnits), end: number.end, unit: null, value, whole };
  }
  const unit = findLengthUnit(name[1]);
  if (!unit) return refuse(unknownUnit(name[1], bareUnits));
  return {
    ok: true,
    mm: unit.short === "in" ? mmFromInches(value) : value * unit.mm,
    end: number.end + name[0].length,
    unit: unit.short,
    value,
    whole,
  };
}

/** The `3 1/4"` of `5' 3 1/4"`; a dash may join the two (`5'-3 1/4"`). */
function readInchesAfterFeet(plain: string, feet: LengthTerm & { readonly ok: true }): LengthTerm {
  const rest = plain.slice(feet.end);
  if (feet.unit !== "ft")
    return refuse(`cannot read "${rest.trim()}" after "${plain.slice(0, feet.end)}"; ${EXAMPLE}`);
  if (!feet.whole) return refuse("feet followed by inches must be whole feet");
  const join = /^(?: ?| - |-)(?=[\d.])/.exec(rest);
  if (!join) return refuse(`cannot read "${rest.trim()}" after the feet; write them as 5' 3 1/4"`);
  const inches = readLengthTerm(plain, feet.end + join[0].length, "in");
  if (!inches.ok) return inches;
  if (inches.unit !== "in" && inches.unit !== null) return refuse("feet are followed by inches only");
  if (inches.value >= 12) return refuse("the inches after the feet must be less than 12");
  if (inches.end < plain.length) return refuse(`cannot read "${plain.slice(inches.end).trim()}" at the end`);
  return inches;
}

function unknownUnit(name: string, fileUnits: FileUnits): string {
  const spellings = [fileUnits, ...LENGTH_UNITS.flatMap((unit) => unit.spellings)];
  const near = nearestWord(
    name,
    spellings.filter((spelling) => /[a-z]/.test(spelling)),
  );
  const hint = near
    ? `did you mean "${near}"?`
    : `units of length: ${LENGTH_UNITS.map((unit) => unit.short).join(", ")}`;
  return `unknown unit "${name}"; ${hint}`;
}

function refuse(mend: string): { readonly ok: false; readonly mend: string } {
  return { ok: false, mend };
}
