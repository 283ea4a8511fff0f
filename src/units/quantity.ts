import type { FileUnits } from "./lengthUnits.ts";
import { readMeasureNumber } from "./measureText.ts";
import { readableText } from "./parseNumber.ts";
import { nearestWord } from "./words.ts";

/** What a number that is neither length nor angle measures. */
export type Quantity = "weight" | "load" | "pressure" | "stress" | "area" | "volume";

/** A unit: its short name, its size in the unit used inside, and every spelling. */
interface QuantityUnit {
  readonly short: string;
  readonly size: number;
  readonly spellings: readonly string[];
}

/** Standard gravity, m/s²: 3rd CGPM, 1901, exact by definition. */
export const GRAVITY = 9.80665;

/** Kilograms in a pound avoirdupois: exact by the international yard and pound agreement of 1959. */
const KG_PER_POUND = 0.45359237;

/** N in a pound-force. */
export const NEWTONS_PER_POUND = KG_PER_POUND * GRAVITY;

const SQUARE_INCH = 25.4 ** 2;

/** lbf/in² as MPa (N/mm²). */
export const MPA_PER_PSI = NEWTONS_PER_POUND / SQUARE_INCH;

/**
 * Units of each quantity, by size in the unit used inside: weight kg (what a scale shows), load N, pressure and
 * stress MPa (N/mm², so that load = pressure × area needs no factor), area mm², volume mm³. The first is the bare unit of a
 * file in inches, the second that of a file in millimeters.
 */
const UNITS: Readonly<Record<Quantity, readonly [QuantityUnit, QuantityUnit, ...QuantityUnit[]]>> = {
  weight: [
    { short: "lb", size: KG_PER_POUND, spellings: ["lb", "lbs", "pound", "pounds"] },
    { short: "kg", size: 1, spellings: ["kg", "kilogram", "kilograms"] },
  ],
  load: [
    { short: "lb", size: NEWTONS_PER_POUND, spellings: ["lb", "lbs", "lbf", "pound", "pounds"] },
    { short: "N", size: 1, spellings: ["n", "newton", "newtons"] },
    { short: "kN", size: 1000, spellings: ["kn"] },
    { short: "kg", size: GRAVITY, spellings: ["kg", "kgf", "kp"] },
  ],
  pressure: [
    { short: "psi", size: MPA_PER_PSI, spellings: ["psi", "psig"] },
    { short: "kPa", size: 0.001, spellings: ["kpa"] },
    { short: "bar", size: 0.1, spellings: ["bar"] },
    { short: "MPa", size: 1, spellings: ["mpa"] },
  ],
  stress: [
    { short: "psi", size: MPA_PER_PSI, spellings: ["psi"] },
    { short: "MPa", size: 1, spellings: ["mpa"] },
    { short: "ksi", size: 1000 * MPA_PER_PSI, spellings: ["ksi"] },
  ],
  area: [
    { short: "in2", size: SQUARE_INCH, spellings: ["in2", "in^2", "in²", "sqin"] },
    { short: "cm2", size: 100, spellings: ["cm2", "cm^2", "cm²"] },
    { short: "mm2", size: 1, spellings: ["mm2", "mm^2", "mm²"] },
  ],
  volume: [
    { short: "in3", size: 25.4 ** 3, spellings: ["in3", "in^3", "in³", "cuin"] },
    { short: "L", size: 1e6, spellings: ["l", "liter", "liters", "litre", "litres"] },
    { short: "cm3", size: 1000, spellings: ["cm3", "cm^3", "cm³", "cc"] },
  ],
};

/** A value in the unit used inside, or what is wrong with the text and what would be right (no full stop). */
export type ParsedQuantity =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly mend: string };

/** The unit bare numbers of a quantity have in a file: `psi`, `kPa`. */
export function bareUnit(quantity: Quantity, units: FileUnits): string {
  return UNITS[quantity][units === "in" ? 0 : 1].short;
}

/** A value in the unit used inside as a bare number of a file with these units, full precision. */
export function quantityInUnits(value: number, quantity: Quantity, units: FileUnits): number {
  return value / UNITS[quantity][units === "in" ? 0 : 1].size;
}

/**
 * Reads a weight, load, pressure, area or volume: a bare number in the file's unit, or text such as `60 psi`, `4.1 bar`
 * or `1240 lb`. Never throws.
 */
export function parseQuantity(
  typed: number | string,
  quantity: Quantity,
  fileUnits: FileUnits,
): ParsedQuantity {
  const units = UNITS[quantity];
  const bare = units[fileUnits === "in" ? 0 : 1];
  if (typeof typed === "number") {
    return Number.isFinite(typed)
      ? { ok: true, value: typed * bare.size + 0 }
      : { ok: false, mend: "must be a finite number" };
  }
  const example = `write a ${quantity} such as 60 or "60 ${bare.short}"`;
  const readable = readableText(typed, example);
  if (!readable.ok) return readable;
  const plain = readable.text;
  const sign = plain.startsWith("-") ? -1 : 1;
  const number = readMeasureNumber(plain, /^[+-]? ?/.exec(plain)![0].length);
  if (!number.ok) return { ok: false, mend: `${number.mend}; ${example}` };
  const name = plain.slice(number.end).trim();
  const spelling = name.toLowerCase().replace(/\.$/, "");
  const unit = name === "" ? bare : units.find(({ spellings }) => spellings.includes(spelling));
  if (unit) return { ok: true, value: sign * number.value * unit.size + 0 };
  const near = nearestWord(
    spelling,
    units.flatMap(({ spellings }) => spellings),
  );
  const shorts = units.map(({ short }) => short).join(", ");
  return {
    ok: false,
    mend: `unknown unit "${name}"; ${near ? `did you mean "${near}"?` : `units of ${quantity}: ${shorts}`}`,
  };
}
