import { setAt } from "../../setup/reading/setAt.ts";
import { bareTyped, lengthAt } from "../../setup/reading/typedPair.ts";
import { type KeyPath, keyText, valueAt } from "../../setup/types/keyPath.ts";
import type { LengthUnit } from "../../setup/types/types.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { degFromRad, parseAngle } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { MeasuredTruck } from "../measure/measured.ts";
import { readingMoves } from "../measure/readingMoves.ts";
import { sizeValues } from "../measure/sizeValues.ts";
import { mayMove } from "../window/fieldsToVary.ts";
import { pointsOf, toldBy, type Written } from "../worksheet/withReadings.ts";
import { worksheetAskOf } from "../worksheet/worksheetAskOf.ts";
import type { OddsInput } from "./oddsInputs.ts";

/** What one standard deviation of an input does to numbers of the setup; mm or radians. */
export type Moves = readonly { readonly path: KeyPath; readonly by: number }[];

/** A number that is drawn, with what moves by it. */
export interface MovingInput extends OddsInput {
  readonly moves: Moves;
}

/** What readings do to a setup's numbers. */
export interface ReadTruck {
  /** A reading each. */
  readonly inputs: readonly MovingInput[];
  /** What one standard deviation of a number that was typed does to those which readings tell by it. */
  readonly movesWith: (input: OddsInput) => Moves;
}

/** A number farther from what its readings tell has been given another value since. mm, and a tenth of a degree. */
const STANDS = { length: 1, angle: 0.1 * (Math.PI / 180) };

/** mm or radians. What moves less is rounding. */
const LEAST = { length: 1e-4, angle: 1e-7 };

const NONE: ReadTruck = { inputs: [], movesWith: () => [] };

/**
 * The readings that a setup's numbers stand by, each drawn for itself: so what hangs on the same tape moves together, points with
 * the knuckle that is worked out of them, and what matters is a reading that can be taken again. Numbers that were put elsewhere
 * since, and points of the right side alone, do not move.
 * @param told keys of numbers whose own ± goes before
 */
export function readInputs(document: unknown, told: ReadonlySet<string>): ReadTruck {
  const readings = valueAt(document, ["readings"]);
  if (!Array.isArray(readings) || readings.length === 0) return NONE;
  const { ask, units, issues } = worksheetAskOf(document, []);
  if (ask === null || units === null || issues.length > 0 || ask.readings.length === 0) return NONE;
  const { measured, moves } = readingMoves(ask);
  const now = numbersOf(document, measured, units);
  const standing = new Set(
    [...now].flatMap(([key, { path, value }]) => {
      const typed = numberAt(document, path, units);
      const stands = typed !== null && Math.abs(typed - value) <= STANDS[kindOf(path)];
      return stands && mayMove(path) && !told.has(key) ? [key] : [];
    }),
  );
  const between = (more: Numbers, less: Numbers): Moves =>
    [...standing].flatMap((key) => {
      const [high, low] = [more.get(key), less.get(key)];
      if (!high || !low) return [];
      const by = 0.5 * (high.value - low.value);
      return Math.abs(by) > LEAST[kindOf(high.path)] ? [{ path: high.path, by }] : [];
    });
  const inputs = moves.flatMap(({ reading, part, truckAt }): readonly MovingInput[] => {
    if (reading.index < 0) return [];
    const [more, less] = [1, -1].map((side) => numbersOf(document, truckAt(side), units)) as [
      Numbers,
      Numbers,
    ];
    const found = between(more, less);
    if (found.length === 0) return [];
    const path: KeyPath = ["readings", reading.index, part];
    const kind = reading.kind === "angle" ? "angle" : "length";
    return [{ path, key: keyText(path), kind, within: reading.within, source: "reading", moves: found }];
  });
  const movesWith = ({ path, kind, within }: OddsInput): Moves => {
    const typed = numberAt(document, path, units);
    if (typed === null || !["knuckle", "wheel"].includes(String(path[0]))) return [];
    const [more, less] = [1, -1].map((side) => {
      const value = typed + side * within;
      const plain = kind === "angle" ? degFromRad(value) : unitsFromMm(value, units);
      return numbersOf(setAt(document, path, plain), measured, units);
    }) as [Numbers, Numbers];
    return between(more, less);
  };
  return { inputs, movesWith };
}

type Numbers = ReadonlyMap<string, { readonly path: KeyPath; readonly value: number }>;

/** Every number that a truck as measured writes into a setup, mm or radians. */
function numbersOf(document: unknown, measured: MeasuredTruck, units: LengthUnit): Numbers {
  const numbers = new Map<string, { readonly path: KeyPath; readonly value: number }>();
  const spread = (path: KeyPath, value: Written["value"] | readonly number[]): void => {
    if (typeof value === "number") numbers.set(keyText(path), { path, value });
    else value.forEach((one, i) => void spread([...path, i], one));
  };
  for (const { path, value } of writtenOf(document, measured, units)) spread(path, value);
  return numbers;
}

/** A truck of its owner's own has a knuckle of its own, on which no reading says anything. */
function writtenOf(document: unknown, measured: MeasuredTruck, units: LengthUnit) {
  if (!isOnAssumedLayout(document))
    return [...pointsOf(document, measured), ...sizeValues(measured, document, units)];
  const { gauged, told } = toldBy(document, measured, units);
  return [...gauged, ...told];
}

function kindOf(path: KeyPath): OddsInput["kind"] {
  return path.at(-1) === "pinAngle" ? "angle" : "length";
}

function numberAt(document: unknown, path: KeyPath, units: LengthUnit): number | null {
  if (kindOf(path) === "length") return lengthAt(document, path, units);
  const angle = parseAngle(bareTyped(valueAt(document, path)) as string | number);
  return angle.ok ? angle.rad : null;
}
