import type { OrderedSide } from "../../setup/types/orderTypes.ts";
import type { Point } from "../../setup/types/truckTypes.ts";
import { degFromRad } from "../../units/angle.ts";
import {
  type BoltPattern,
  boltPatternText,
  holeDistance,
  holeDistanceAcross,
} from "../../units/boltPattern.ts";
import { formatLength, type LengthFormat } from "../../units/formatLength.ts";
import { parseLength } from "../../units/parseLength.ts";
import { taperText } from "../../units/taper.ts";
import {
  pitchDiameter,
  stressArea,
  type ThreadCallout,
  tapDrill,
  threadText,
} from "../../units/threadCallout.ts";
import type { OrderedField, OrderedValue } from "../order/orderedFields.ts";
import type { OrderedParts } from "../order/orderedParts.ts";
import { withMinus } from "./lengths.ts";

/** mm. A fraction that is off by less than this says the size. */
const EXACT = 0.005;

/**
 * A size as a drawing gives it: the fraction shown where it says it to 0.005 mm, else decimals, to 0.001 in or 0.01 mm.
 * A bearing's bore must not be rounded to what a tape reads.
 */
export function sizeText(mm: number, format: LengthFormat): string {
  const fraction = formatLength(mm, { ...format, fraction: 64, decimals: 1 });
  const read = parseLength(fraction, format.units);
  const isDecimal = format.units === "in" && format.fraction === "decimal";
  if (!isDecimal && read.ok && Math.abs(read.mm - mm) <= EXACT) return withMinus(fraction);
  return withMinus(
    formatLength(mm, { units: format.units, fraction: "decimal", decimals: format.units === "in" ? 3 : 2 }),
  );
}

/** A point in its frame: `[-5 7/8, -1, 1 3/8] in`. */
export function pointText(point: Point, format: LengthFormat): string {
  const bare = point.map((mm) => sizeText(mm, format).replace(/ (?:in|mm)$/, ""));
  return `${bare.join(", ")} ${format.units}`;
}

/** A value an order writes, as a person reads it. */
export function orderedText(value: OrderedValue | null, format: LengthFormat): string {
  switch (value?.kind) {
    case undefined:
      return "nothing";
    case "length":
      return sizeText(value.mm, format);
    case "angle":
      return `${withMinus(String(Number(degFromRad(value.rad).toFixed(3))))}°`;
    case "point":
      return pointText(value.point, format);
    case "word":
      return value.word === "hub" ? "from the hub face" : value.word;
  }
}

/**
 * What an ordered number is, where the order and its catalogs say others that it comes of: `the ball that holds its whole housing,
 * 2 in across and 1 1/2 in high: …`. "" = they say it themselves.
 */
export function comesOf({ path }: OrderedField, parts: OrderedParts, format: LengthFormat): string {
  const [block, joint, key] = path;
  if (block !== "hardware" || key !== "radius") return "";
  if (joint !== "upperBallJoint" && joint !== "lowerBallJoint") return "";
  const { housingDiameter, housingHeight } = parts[joint];
  if (housingDiameter === null || housingHeight === null) return "";
  const [across, high] = [housingDiameter, housingHeight].map((mm) => sizeText(mm, format));
  return `the ball that holds its whole housing, ${across} across and ${high} high: from the middle to the housing’s corner, which is farther than half its width`;
}

/** Where the order and a block disagree, in a sentence: what each says, and which one counts. */
export function differenceSentence(
  key: string,
  field: OrderedField,
  parts: OrderedParts,
  format: LengthFormat,
): string {
  const why = comesOf(field, parts, format);
  const ordered = `${orderedText(field.ordered, format)}${why === "" ? "" : ` (${why})`}`;
  return `${key}: the order says ${ordered}, the block ${orderedText(field.block, format)}; answers go by the block until the order is written.`;
}

/** A bolt pattern with what a tape reads on it: `5x5: 2.939 in between neighbors, 4.755 in across`. */
export function patternWords(pattern: BoltPattern, format: LengthFormat): string {
  const inch: LengthFormat = {
    units: format.units,
    fraction: "decimal",
    decimals: format.units === "in" ? 3 : 2,
  };
  const [next, across] = [holeDistance(pattern, 1), holeDistanceAcross(pattern)].map((mm) =>
    formatLength(mm, inch),
  );
  const isOpposite = pattern.holes % 2 === 0;
  return `${boltPatternText(pattern)}: centers ${next} between neighbors, ${across} ${isOpposite ? "across" : "to the farthest hole"}`;
}

/** A thread with its sizes: `pitch diameter 0.589 in, stress area 0.256 in², drill 0.571 in to tap`. */
export function threadWords(thread: ThreadCallout, format: LengthFormat): string {
  const isInch = format.units === "in";
  const size = (mm: number) =>
    formatLength(mm, { units: format.units, fraction: "decimal", decimals: isInch ? 4 : 3 });
  const area = stressArea(thread);
  const areaWords = isInch ? `${(area / 25.4 ** 2).toFixed(4)} in²` : `${area.toFixed(1)} mm²`;
  return `pitch diameter ${size(pitchDiameter(thread))}, stress area ${areaWords}, drill ${size(tapDrill(thread))} to tap`;
}

/** How much thread a length holds: `22.5 threads`. @param engaged mm */
export function engagedThreads(engaged: number, { pitch }: ThreadCallout): string {
  return `${Number((engaged / pitch).toFixed(1))} threads`;
}

/** What is made: `1 pair, left and right`, `2 left`. */
export function madeWords(side: OrderedSide, quantity: number): string {
  if (side === "pair") return quantity === 1 ? "1 pair, left and right" : `${quantity} pairs, left and right`;
  return `${quantity} ${side}`;
}

/** What a form shows faintly in fields whose way of writing is not plain, by key. */
export const WRITTEN_SO: Readonly<Record<string, string>> = {
  boltPattern: "such as 5x5",
  thread: "such as 5/8-18",
  bracketThread: "such as 1/2-20",
  nutThread: "such as 3/4-16",
};

/** What a form shows faintly while the knuckle that an order starts from has no name. */
export const BASE_NAME_HINT = "such as cast half-ton, disc";

/** What a form shows faintly in an empty field: a number of a catalog or of the base knuckle, without its unit; undefined = none. */
export function partText(key: string, value: unknown, format: LengthFormat): string | undefined {
  if (value === null || value === undefined) return undefined;
  if (typeof value === "string") return value;
  if (typeof value === "number") {
    if (key === "taper" || key === "seat") return taperText(value);
    if (key === "pinAngle") return String(Number(degFromRad(value).toFixed(3)));
    return sizeText(value, format).replace(/ (?:in|mm)$/, "");
  }
  if (typeof value !== "object") return undefined;
  if ("holes" in value) return boltPatternText(value as BoltPattern);
  return "pitch" in value ? threadText(value as ThreadCallout) : undefined;
}
