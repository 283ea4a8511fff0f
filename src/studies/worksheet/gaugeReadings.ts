import { TRUCK_POINTS } from "../../setup/blocks/readings/readingPoint.ts";
import { type KeyPath, valueAt } from "../../setup/types/keyPath.ts";
import type { ReadingSize } from "../../setup/types/readingTypes.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { LIP } from "../../setup/worksheet/worksheetLines.ts";
import { tapeText } from "../../units/plainLengthText.ts";
import { ASSUMED_LIP_POINTS } from "../measure/assumedTruck.ts";

/** Sizes that calipers read of a tire, and a straightedge of a wheel, in the order they are read. */
export const CALIPERED: readonly ReadingSize[] = [
  "tire.diameter",
  "tire.sectionWidth",
  "tire.treadWidth",
  "tire.shoulderDrop",
];
export const STRAIGHTEDGED: readonly ReadingSize[] = ["wheel.lipToLip", "wheel.backspacing"];

/** A reading as the file holds it. */
export type ReadingDocument = Readonly<Record<string, unknown>>;

/** Those of some sizes that a document's readings do not ask for yet, empty. */
export function sizeReadings(document: unknown, sizes: readonly ReadingSize[]): readonly ReadingDocument[] {
  const asked = new Set(readingsOf(document).map((one) => valueAt(one, ["size"])));
  return sizes.filter((size) => !asked.has(size)).map((size) => ({ size }));
}

/** A fender lip along a level stick, empty: stations where the assumed lip has its points, front to rear. */
export function stickReading(units: LengthUnit): ReadingDocument {
  return {
    stations: [...ASSUMED_LIP_POINTS.values()].map(([ahead]) => [tapeText(ahead, units), "", ""]),
    part: LIP,
    stick: { offset: "", height: "" },
  };
}

/**
 * A plumb bob from the next point that none is dropped from, its mark, and how far ahead and out the mark lies; null = there is
 * a mark under every point.
 */
export function plumbReadings(document: unknown): readonly [ReadingDocument, ...ReadingDocument[]] | null {
  const dropped = readingsOf(document).map((one) => valueAt(one, ["plumb"]));
  const point = plumbPoints(document).find((one) => !dropped.includes(one));
  if (point === undefined) return null;
  const mark = freeMark(document);
  return [{ plumb: point, mark }, { ahead: mark }, { offset: mark }];
}

/** Points of a truck that a bob can be dropped from, in the order of crawling inward. */
export function plumbPoints(document: unknown): readonly string[] {
  const isPitman = valueAt(document, ["truck", "steering", "type"]) === "pitman";
  return ["tieRodOuter", ...[...TRUCK_POINTS].reverse()].filter(
    (point) => isPitman || !/^steering\.(pitman|idler)/.test(point),
  );
}

/** Tapes from one mark on the floor to each other one that has none yet. @param mark its name */
export function markTapes(document: unknown, mark: string): readonly ReadingDocument[] {
  const readings = readingsOf(document);
  const others = readings.flatMap((one) => {
    const other = valueAt(one, ["mark"]);
    return typeof other === "string" && other !== mark ? [other] : [];
  });
  const isTaped = (other: string) =>
    readings.some((one) => {
      const ends = valueAt(one, ["between"]);
      return Array.isArray(ends) && ends.includes(mark) && ends.includes(other);
    });
  return others.filter((other) => !isTaped(other)).map((other) => ({ between: [mark, other] }));
}

/** The point that each mark of a document was let down from. */
export function marksOf(document: unknown): ReadonlyMap<string, string> {
  return new Map(
    readingsOf(document).flatMap((one): [string, string][] => {
      const [mark, point] = [valueAt(one, ["mark"]), valueAt(one, ["plumb"])];
      return typeof mark === "string" && typeof point === "string" ? [[mark, point]] : [];
    }),
  );
}

function freeMark(document: unknown): string {
  const taken = marksOf(document);
  for (let i = 0; ; i++) {
    const letter = String.fromCharCode(65 + (i % 26)) + (i < 26 ? "" : String(Math.floor(i / 26)));
    if (!taken.has(letter)) return letter;
  }
}

/** Where the first reading of a lip along a stick stands; null = there is none. */
export function stickPath(document: unknown): KeyPath | null {
  const at = readingsOf(document).findIndex((one) => Array.isArray(valueAt(one, ["stations"])));
  return at < 0 ? null : ["readings", at];
}

/** The readings of a document as typed. */
function readingsOf(document: unknown): readonly unknown[] {
  const list = valueAt(document, ["readings"]);
  return Array.isArray(list) ? list : [];
}
