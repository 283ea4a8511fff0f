import { readMeasureNumber } from "./measureText.ts";
import { readableText } from "./parseNumber.ts";

/** Degrees to radians; multiples of 90 give the nearest number to that multiple of π/2 (`deg / 180` is exact there). */
export function radFromDeg(deg: number): number {
  return (deg / 180) * Math.PI;
}

/** Radians to degrees; undoes `radFromDeg` exactly for multiples of 90. */
export function degFromRad(rad: number): number {
  return (rad / Math.PI) * 180;
}

/** An angle in radians as a person reads it, `8.4°`, with `decimals` digits after the point. Finite angles only. */
export function formatAngle(rad: number, decimals = 1): string {
  if (!Number.isFinite(rad)) throw new RangeError(`formatAngle: rad must be finite, got ${rad}`);
  const text = degFromRad(rad).toFixed(decimals);
  return `${Number(text) === 0 ? text.replace("-", "") : text}°`;
}

/** An angle in radians, or what is wrong with the text and what would be right (no full stop). */
export type ParsedAngle =
  | { readonly ok: true; readonly rad: number }
  | { readonly ok: false; readonly mend: string };

const EXAMPLE = "write an angle in degrees such as 8.4, 8.4° or 8° 24'";
const DEGREES = /^ ?(?:°|(?:degrees?|degs?)\b\.?)/i;
const MINUTES = /^ ?(?:'|(?:minutes?|min)\b\.?)/i;
const SECONDS = /^ ?(?:"|(?:seconds?|sec)\b\.?)/i;

/**
 * Reads an angle in degrees: a number, or text `8.4`, `8.4°`, `8.4 deg`, `8 1/2°`, `8° 24'`, `8° 24' 30"`.
 * A sign in front counts for all of it. Never throws.
 */
export function parseAngle(text: string | number): ParsedAngle {
  if (typeof text === "number") {
    if (!Number.isFinite(text)) return refuse("must be a finite number");
    return { ok: true, rad: radFromDeg(text) + 0 }; // + 0 turns −0 into 0
  }
  if (typeof text !== "string") return refuse(EXAMPLE);
  const readable = readableText(text, EXAMPLE);
  if (!readable.ok) return readable;
  const plain = readable.text;
  const sign = plain.startsWith("-") ? -1 : 1;
  const number = readMeasureNumber(plain, /^[+-]? ?/.exec(plain)![0].length);
  if (!number.ok)
    return refuse(number.mend === "no number found" ? `no number found; ${EXAMPLE}` : number.mend);
  let rest = plain.slice(number.end);
  const mark = DEGREES.exec(rest);
  if (!mark)
    return rest === "" ? degrees(sign * number.value) : refuse(`cannot read "${rest.trim()}"; ${EXAMPLE}`);
  rest = rest.slice(mark[0].length);
  if (rest === "") return degrees(sign * number.value);

  if (!number.whole) return refuse("degrees followed by minutes must be whole degrees");
  const minutes = readSixtieths(rest, MINUTES, "minutes");
  if (!minutes.ok) return minutes;
  if (minutes.rest === "") return degrees(sign * (number.value + minutes.value / 60));
  if (!minutes.whole) return refuse("minutes followed by seconds must be whole minutes");
  const seconds = readSixtieths(minutes.rest, SECONDS, "seconds");
  if (!seconds.ok) return seconds;
  if (seconds.rest !== "") return refuse(`cannot read "${seconds.rest.trim()}" at the end`);
  return degrees(sign * (number.value + (minutes.value + seconds.value / 60) / 60));
}

type Sixtieths =
  | { readonly ok: true; readonly value: number; readonly whole: boolean; readonly rest: string }
  | { readonly ok: false; readonly mend: string };

function readSixtieths(text: string, mark: RegExp, what: string): Sixtieths {
  const number = readMeasureNumber(text, text.startsWith(" ") ? 1 : 0);
  if (!number.ok) return refuse(`cannot read "${text.trim()}"; ${EXAMPLE}`);
  const found = mark.exec(text.slice(number.end));
  if (!found) return refuse(`cannot read "${text.trim()}" as ${what}; ${EXAMPLE}`);
  if (number.value >= 60) return refuse(`the ${what} must be less than 60`);
  return {
    ok: true,
    value: number.value,
    whole: number.whole,
    rest: text.slice(number.end + found[0].length),
  };
}

function degrees(deg: number): ParsedAngle {
  return { ok: true, rad: radFromDeg(deg) + 0 };
}

function refuse(mend: string): { readonly ok: false; readonly mend: string } {
  return { ok: false, mend };
}
