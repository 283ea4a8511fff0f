/** Longest text taken for one measurement; a tape reading is far shorter. */
export const MAX_MEASURE_TEXT = 64;

// biome-ignore format: a table
const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  "¼": "1/4", "½": "1/2", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
  "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
};

/**
 * The same measurement in plain characters: one space for any run of spaces, `-` for every minus and short dash,
 * `/` for fraction slashes, `'` and `"` for primes and curly quotes, `5 5/8` for `5⅝`, `°` for its look-alikes.
 */
export function plainMeasureText(text: string): string {
  return text
    .replace(/[\u2010-\u2013\u2212\ufe63\uff0d]/g, "-")
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/[\u2018\u2019\u02b9\u02bc\u2032]/g, "'")
    .replace(/[\u201c\u201d\u02ba\u2033]|''/g, '"')
    .replace(/[\u00ba\u02da]/g, "°")
    .replace(/(-?)([¼-¾⅐-⅞])/g, (_, dash: string, glyph: string) => {
      // A dash joins on to what follows ("5-⅝", "-⅝"); anything else is set apart ("5⅝").
      return `${dash === "" ? " " : dash}${VULGAR_FRACTIONS[glyph] ?? glyph} `;
    })
    .replace(/\s+/g, " ")
    .trim();
}

/** A number read from text, and where it ends; or what is wrong with it. */
export type MeasureNumber =
  | { readonly ok: true; readonly value: number; readonly end: number; readonly whole: boolean }
  | { readonly ok: false; readonly mend: string };

const MIXED = /(\d+)(?: |-)(\d+) ?\/ ?(\d+)(?![\d.])/y;
const FRACTION = /(\d+) ?\/ ?(\d+)(?![\d.])/y;
const DECIMAL = /(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/iy;

/**
 * Reads one unsigned number at `start` of plain text: `5`, `5.625`, `.5`, `1e3`, `5/8`, `5 5/8`, `5-5/8`.
 * Refuses a zero denominator and a whole number followed by a fraction of 1 or more (`5 9/8`: likely a slip).
 */
export function readMeasureNumber(plain: string, start: number): MeasureNumber {
  MIXED.lastIndex = start;
  const mixed = MIXED.exec(plain);
  if (mixed) {
    const [text, whole, over, under] = mixed as unknown as [string, string, string, string];
    if (Number(under) === 0) return { ok: false, mend: zeroDenominator(text) };
    if (Number(over) >= Number(under)) {
      return { ok: false, mend: `the fraction in "${text}" is not less than 1; check the reading` };
    }
    const value = (Number(whole) * Number(under) + Number(over)) / Number(under);
    return finite(value, start + text.length, false);
  }
  FRACTION.lastIndex = start;
  const fraction = FRACTION.exec(plain);
  if (fraction) {
    const [text, over, under] = fraction as unknown as [string, string, string];
    if (Number(under) === 0) return { ok: false, mend: zeroDenominator(text) };
    return finite(Number(over) / Number(under), start + text.length, false);
  }
  DECIMAL.lastIndex = start;
  const decimal = DECIMAL.exec(plain);
  if (!decimal) return { ok: false, mend: "no number found" };
  return finite(Number(decimal[0]), start + decimal[0].length, /^\d+$/.test(decimal[0]));
}

function zeroDenominator(text: string): string {
  return `"${text}" divides by zero; write the fraction again`;
}

function finite(value: number, end: number, whole: boolean): MeasureNumber {
  return Number.isFinite(value)
    ? { ok: true, value, end, whole }
    : { ok: false, mend: "the number is too large" };
}
