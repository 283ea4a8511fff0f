import { degFromRad, parseAngle } from "./angle.ts";
import { readMeasureNumber } from "./measureText.ts";
import { readableText } from "./parseNumber.ts";

/** A taper as its included angle in radians, or what is wrong with the text and what would be right (no full stop). */
export type ParsedTaper =
  | { readonly ok: true; readonly included: number }
  | { readonly ok: false; readonly mend: string };

const EXAMPLE = 'write a taper with its unit, such as "1.5 in/ft", "7.15°" or "1:8"';

/** Radians. Studs taper by 5° to 12° in all (common practice, no source); outside this a digit or the unit was mistyped. */
const RANGE = { least: 0.02, most: 0.6 } as const;

const PER_FOOT = /^ ?(?:in\.?|inch|inches|") ?(?:\/|per) ?(?:ft\.?|foot|')$|^ ?(?:tpf|ipf)$/i;
const RATIO = /^1 ?(?::|in|on) ?(?=[\d.])/i;

/** Included angle of a cone whose diameter grows by `inchesPerFoot`: 2 atan(T/24), since T/2 is the growth of the radius on 12 in. */
function includedFromPerFoot(inchesPerFoot: number): number {
  return 2 * Math.atan(inchesPerFoot / 24);
}

/** Growth of the diameter in inches on a foot of length, of a cone with this included angle (radians). */
export function perFootFromIncluded(included: number): number {
  return 24 * Math.tan(included / 2);
}

/**
 * Reads a taper of a stud or its seat: inches per foot (`1.5 in/ft`, `2 inches per foot`), included angle (`7.15°`,
 * `7° 9'`), or growth of the diameter on length (`1:8`). A bare number could be either and is refused. Never throws.
 */
export function parseTaper(text: string): ParsedTaper {
  const readable = readableText(text, EXAMPLE);
  if (!readable.ok) return readable;
  const plain = readable.text;
  const ratio = RATIO.exec(plain);
  if (ratio) {
    const over = readMeasureNumber(plain, ratio[0].length);
    return over.ok && over.end === plain.length ? within(2 * Math.atan(0.5 / over.value)) : refuse(EXAMPLE);
  }
  const number = readMeasureNumber(plain, 0);
  if (!number.ok) return refuse(EXAMPLE);
  const rest = plain.slice(number.end);
  if (rest === "") return refuse(`is a bare number: inches per foot or degrees? ${EXAMPLE}`);
  if (PER_FOOT.test(rest)) return within(includedFromPerFoot(number.value));
  const angle = parseAngle(plain);
  return angle.ok ? within(angle.rad) : refuse(EXAMPLE);
}

function within(included: number): ParsedTaper {
  if (included >= RANGE.least && included <= RANGE.most) return { ok: true, included };
  return refuse("is no taper of a stud: that is 0.3 to 7 in/ft, or 1.2° to 34° in all");
}

/** A taper as it is written on an order: inches per foot to four decimals, `1.5 in/ft`. @param included rad */
export function taperText(included: number): string {
  return `${Number(perFootFromIncluded(included).toFixed(4))} in/ft`;
}

/** Both ways a taper is told: `1.5 in/ft (7.153° included)`. @param included rad */
export function taperWords(included: number): string {
  return `${taperText(included)} (${degFromRad(included).toFixed(3)}° included)`;
}

function refuse(mend: string): { readonly ok: false; readonly mend: string } {
  return { ok: false, mend };
}
