import { type FileUnits, findLengthUnit, mmFromUnits } from "./lengthUnits.ts";
import { readMeasureNumber } from "./measureText.ts";
import { readableText } from "./parseNumber.ts";
import { plainLengthText } from "./plainLengthText.ts";

/** Holes evenly spaced on a circle through their centers, as wheels and hubs are bolted. */
export interface BoltPattern {
  readonly holes: number;
  /** Diameter of the circle through the holes' centers, mm. */
  readonly circle: number;
  /** The unit it was written in. */
  readonly unit: FileUnits;
}

/** A bolt pattern, or what is wrong with the text and what would be right (no full stop). */
export type ParsedBoltPattern =
  | { readonly ok: true; readonly pattern: BoltPattern }
  | { readonly ok: false; readonly mend: string };

const EXAMPLE = "write holes and circle, such as 5x5, 6 x 5 1/2 or 5x127";

/** Holes a wheel has: fewer do not hold it square, more are not on a truck's front axle (common practice, no source). */
const HOLES = { least: 3, most: 10 } as const;

/** mm. Circles of wheels on the road lie well inside (common practice, no source); outside a digit was mistyped. */
const CIRCLE = { least: 70, most: 350 } as const;

/** Bare circles up to this are inches, from the next on millimeters: no wheel has a circle of 20 in, and none of 60 mm. */
const BARE = { mostInches: 20, leastMm: 60 } as const;

/** mm. Inch and metric names of one circle differ by their rounding: 4 1/4 in is 107.95 mm and is sold as 108. */
const SAME_CIRCLE = 0.15;

const START = /^(\d{1,2}) ?(?:-? ?(?:hole|lug|bolt)s?)?,? ?(?:x|\*|\/|-|on)? ?(?=[\d.])/i;

/**
 * Reads a bolt pattern as people write it: `5x5`, `5 on 5`, `6 x 5 1/2`, `5x4.75"`, `5x127`, `5 × 114,3 mm`, `6-5.5`. A bare
 * circle is in inches up to 20 and in millimeters from 60, whatever the file's units. Never throws.
 */
export function parseBoltPattern(text: string): ParsedBoltPattern {
  const readable = readableText(text.replaceAll("×", "x"), EXAMPLE);
  if (!readable.ok) return readable;
  const plain = readable.text;
  const start = START.exec(plain);
  // "5 1/2" alone is a length, not 5 holes.
  if (!start || /^\d+ ?$/.test(start[0])) return refuse(EXAMPLE);
  const holes = Number(start[1]);
  const number = readMeasureNumber(plain, start[0].length);
  if (!number.ok) return refuse(`${number.mend}; ${EXAMPLE}`);
  const name = plain.slice(number.end).trim();
  const unit = name === "" ? bareUnit(number.value) : unitOf(name);
  if (unit === null)
    return name === ""
      ? refuse(`cannot tell whether ${number.value} is in inches or millimeters; write its unit`)
      : refuse(`cannot read "${name}" after the circle; ${EXAMPLE}`);
  const circle = mmFromUnits(number.value, unit);
  if (holes < HOLES.least || holes > HOLES.most)
    return refuse(`must have ${HOLES.least} to ${HOLES.most} holes; ${EXAMPLE}`);
  if (circle < CIRCLE.least || circle > CIRCLE.most)
    return refuse("the circle must be between 2 3/4 and 13 3/4 in; check the number and its unit");
  return { ok: true, pattern: { holes, circle, unit } };
}

function bareUnit(value: number): FileUnits | null {
  if (value <= BARE.mostInches) return "in";
  return value >= BARE.leastMm ? "mm" : null;
}

function unitOf(name: string): FileUnits | null {
  const short = findLengthUnit(name)?.short;
  return short === "in" || short === "mm" ? short : null;
}

/** The pattern as it is written on an order: `5x5`, `6x5 1/2`, `5x127`. `parseBoltPattern` gives it back. */
export function boltPatternText({ holes, circle, unit }: BoltPattern): string {
  return `${holes}x${plainLengthText(circle, unit, unit)}`;
}

/**
 * Straight distance between the centers of two holes, `apart` holes from each other, mm: a chord of the circle,
 * D sin(π · apart / holes). For 4, 6 and 8 holes those half the holes apart lie across: the circle itself.
 */
export function holeDistance({ holes, circle }: BoltPattern, apart: number): number {
  return circle * Math.sin((Math.PI * apart) / holes);
}

/** Greatest distance between two holes, mm: the circle for an even number, the longest chord for an odd one. */
export function holeDistanceAcross(pattern: BoltPattern): number {
  return holeDistance(pattern, Math.floor(pattern.holes / 2));
}

/** Whether what is drilled to one fits the other: as many holes, circles alike but for the rounding of their names. */
export function isSamePattern(a: BoltPattern, b: BoltPattern): boolean {
  return a.holes === b.holes && Math.abs(a.circle - b.circle) <= SAME_CIRCLE;
}

function refuse(mend: string): { readonly ok: false; readonly mend: string } {
  return { ok: false, mend };
}
