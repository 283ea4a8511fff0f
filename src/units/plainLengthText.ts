import { formatLength } from "./formatLength.ts";
import { type FileUnits, TAPE_MARK, unitsFromMm } from "./lengthUnits.ts";
import { parseLength } from "./parseLength.ts";

/** mm. A text gives its length back this closely: far finer than a tape, coarser than what arithmetic rounds. */
const SAME_LENGTH = 1e-9;

/** Finest tape fraction written as a fraction. */
const FINEST = 64;

/**
 * A length as plain text for a setup file, as short as it can be while it still says the length (to 1e-9 mm):
 * `5 3/4` (inches, a fraction down to 1/64), `142.9`, `5.743`, or with its unit where only the other unit says it
 * shortly: `145.9 mm` in a file in inches. `parseLength(text, fileUnits)` gives the length back.
 * @param prefer the unit the text should be in where it can; default the file's
 * @throws RangeError for NaN, infinite or astronomically large lengths (1e12 mm and more)
 */
export function plainLengthText(mm: number, fileUnits: FileUnits, prefer: FileUnits = fileUnits): string {
  if (!(Math.abs(mm) < 1e12)) throw new RangeError(`plainLengthText: mm must be finite and sane, got ${mm}`);
  const other = prefer === "in" ? "mm" : "in";
  const candidates = [
    ...(prefer === "in" ? [fractionText(mm)] : []),
    decimalText(mm, prefer, 4),
    decimalText(mm, other, 4),
  ];
  for (const text of candidates) {
    const bare = withoutUnit(text, fileUnits);
    if (gives(bare, fileUnits, mm)) return bare;
  }
  return withoutUnit(`${trimmed(unitsFromMm(mm, prefer))} ${prefer}`, fileUnits);
}

/** A length put on the nearest mark of a tape, as plain text for a setup file. */
export function tapeText(mm: number, fileUnits: FileUnits): string {
  const mark = TAPE_MARK[fileUnits];
  return plainLengthText(Math.round(mm / mark) * mark, fileUnits);
}

function fractionText(mm: number): string {
  return formatLength(mm, { units: "in", fraction: FINEST });
}

function decimalText(mm: number, units: FileUnits, decimals: number): string {
  return `${Number(unitsFromMm(mm, units).toFixed(decimals)) + 0} ${units}`;
}

/** Twelve digits and no exponent. */
function trimmed(value: number): string {
  const text = String(Number(value.toPrecision(15)));
  return text.includes("e") ? value.toFixed(12) : text;
}

function withoutUnit(text: string, units: FileUnits): string {
  return text.endsWith(` ${units}`) ? text.slice(0, -units.length - 1) : text;
}

function gives(text: string, units: FileUnits, mm: number): boolean {
  const back = parseLength(text, units);
  return back.ok && Math.abs(back.mm - mm) <= SAME_LENGTH;
}
