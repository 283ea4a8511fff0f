import { type FileUnits, MM_PER_INCH } from "./lengthUnits.ts";

/** How lengths are shown. */
export interface LengthFormat {
  readonly units: FileUnits;
  /** Inches only: the finest fraction, or "decimal". Default 16. */
  readonly fraction?: 16 | 32 | 64 | "decimal";
  /** Digits after the point: default 1 for mm, 3 for decimal inches. */
  readonly decimals?: number;
}

/**
 * A length in mm as a person reads it off a tape: `5 5/8 in`, `-3/16 in`, `0 in`, `142.9 mm`.
 * Fractions are the nearest (halves away from zero), reduced; `parseLength` gives back exactly that fraction.
 * @throws RangeError for NaN, infinite or astronomically large lengths (1e12 mm and more).
 */
export function formatLength(mm: number, format: LengthFormat): string {
  if (!(Math.abs(mm) < 1e12)) throw new RangeError(`formatLength: mm must be finite and sane, got ${mm}`);
  const { units, fraction = 16 } = format;
  if (units === "mm") return `${fixed(mm, format.decimals ?? 1)} mm`;
  if (fraction === "decimal") return `${fixed(mm / MM_PER_INCH, format.decimals ?? 3)} in`;
  return `${inchFraction(mm / MM_PER_INCH, fraction)} in`;
}

function inchFraction(inches: number, finest: number): string {
  const count = Math.round(Math.abs(inches) * finest);
  if (count === 0) return "0";
  const whole = Math.floor(count / finest);
  let over = count % finest;
  let under = finest;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  const parts = [whole > 0 ? String(whole) : "", over > 0 ? `${over}/${under}` : ""].filter(
    (part) => part !== "",
  );
  return `${inches < 0 ? "-" : ""}${parts.join(" ")}`;
}

/** Fixed decimals without a negative zero. */
function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}
