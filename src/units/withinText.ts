import { plainMeasureText } from "./measureText.ts";

/** A measurement and its uncertainty as typed, apart; or what is wrong (one sentence without a full stop). */
export type SplitWithin =
  | { readonly ok: true; readonly value: string; readonly within: string }
  | { readonly ok: false; readonly value: string; readonly mend: string };

/** Ways people type plus or minus; dashes and minus signs of all lengths. */
const PLUS_MINUS = /±|\+ ?[/\u2044\u2215] ?[-\u2010-\u2013\u2212]|\+[-\u2010-\u2013\u2212]/;

/** Whether a text tells an uncertainty after its value. */
export function hasWithin(text: string): boolean {
  return PLUS_MINUS.test(text);
}

/**
 * Takes `5 5/8 ± 1/16` apart; also `+/-` and `+-`. An uncertainty without a unit has its value's: `142.9 mm ± 1`. After
 * feet or minutes of arc it needs its own, for it is hardly ever in them. null = the text tells none.
 */
export function splitWithin(text: string): SplitWithin | null {
  const sign = PLUS_MINUS.exec(text);
  if (sign === null) return null;
  const value = text.slice(0, sign.index).trim();
  const within = text.slice(sign.index + sign[0].length).trim();
  const refuse = (mend: string): SplitWithin => ({ ok: false, value, mend });
  if (value === "") return refuse("has nothing before the ±; write the value, then the ±");
  if (within === "") return refuse("has nothing after the ±; write a number there, or leave the ± out");
  if (hasWithin(within)) return refuse("has ± twice; write the value, then ± and one number");
  const unit = unitAtEnd(value);
  if (unit === "" || unitAtEnd(within) !== "") return { ok: true, value, within };
  if (unit === "'") return refuse("needs a unit after the ± too, such as 5' ± 1/4\"");
  return { ok: true, value, within: withUnit(within, unit) };
}

/** A value and its uncertainty as one text; what `splitWithin` takes apart again. */
export function joinWithin(value: string | number, within: string | number): string {
  return `${value} ± ${within}`;
}

/** The unit a measurement ends in; "" = none. */
export function unitAtEnd(text: string): string {
  const plain = plainMeasureText(text);
  if (/^[-+]?[\d.]+e[-+]?\d+$/i.test(plain)) return "";
  return /[a-z°"'^²³]+[23]?\.?$/i.exec(plain)?.[0] ?? "";
}

/** A measurement without a unit, and one after it. */
export function withUnit(text: string, unit: string): string {
  return /^[a-z]/i.test(unit) ? `${text} ${unit}` : `${text}${unit}`;
}
