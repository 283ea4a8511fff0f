/** The unit bare lengths of a file are in. */
export type FileUnits = "in" | "mm";

/** Millimeters in an inch: exact by the international yard and pound agreement of 1959. */
export const MM_PER_INCH = 25.4;

/** mm. From mark to mark of a tape, as one is read: a sixteenth of an inch, a millimeter. */
export const TAPE_MARK: Readonly<Record<FileUnits, number>> = { in: MM_PER_INCH / 16, mm: 1 };

/** A unit of length people write: its short name, size in mm, and every spelling (lower case, no full stop). */
export interface LengthUnitNames {
  readonly short: "in" | "ft" | "mm" | "cm" | "m";
  readonly mm: number;
  readonly spellings: readonly string[];
}

/** Units a length may be typed in, in the order they are offered when a name is not understood. */
export const LENGTH_UNITS: readonly LengthUnitNames[] = [
  { short: "in", mm: MM_PER_INCH, spellings: ["in", '"', "inch", "inches"] },
  { short: "mm", mm: 1, spellings: ["mm", "millimeter", "millimeters", "millimetre", "millimetres"] },
  { short: "ft", mm: 304.8, spellings: ["ft", "'", "foot", "feet"] },
  { short: "cm", mm: 10, spellings: ["cm", "centimeter", "centimeters", "centimetre", "centimetres"] },
  { short: "m", mm: 1000, spellings: ["m", "meter", "meters", "metre", "metres"] },
];

/** Finds a unit by any of its spellings, in any case, with or without a full stop; null = not a unit of length. */
export function findLengthUnit(name: string): LengthUnitNames | null {
  const spelling = name.toLowerCase().replace(/\.$/, "");
  return LENGTH_UNITS.find((unit) => unit.spellings.includes(spelling)) ?? null;
}

/** Inches as mm. Times 254, then by 10: one rounding for tape fractions, so 3.5 in is 88.9 mm and not 88.89999999999999. */
export function mmFromInches(inches: number): number {
  return (inches * 254) / 10;
}

/** A bare number in file units as mm. */
export function mmFromUnits(value: number, units: FileUnits): number {
  return units === "in" ? mmFromInches(value) : value;
}

/** A length in mm as a bare number in file units, full precision. */
export function unitsFromMm(mm: number, units: FileUnits): number {
  return units === "in" ? (mm * 10) / 254 : mm;
}
