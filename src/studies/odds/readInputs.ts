import { pathOfPoint } from "../../setup/givenPoints.ts";
import { lengthAt } from "../../setup/reading/typedPair.ts";
import { type KeyPath, keyText, valueAt } from "../../setup/types/keyPath.ts";
import { readingMoves } from "../measure/readingMoves.ts";
import { worksheetAskOf } from "../worksheet/worksheetAskOf.ts";
import type { OddsInput } from "./oddsInputs.ts";

/** A reading that is drawn, and what one standard deviation of it does to coordinates of the setup. mm. */
export interface ReadInput extends OddsInput {
  readonly moves: readonly { readonly path: KeyPath; readonly by: number }[];
}

/** mm. A point farther from where its readings put it has been given another place since. */
const STANDS = 1;

/**
 * The readings that a setup's points stand by, each drawn for itself: so points that hang on the same tape move together, and what
 * matters is a reading that can be taken again. Points that were put elsewhere since, and those of the right side alone, do not move.
 * @param told keys of numbers whose own ± goes before
 */
export function readInputs(document: unknown, told: ReadonlySet<string>): readonly ReadInput[] {
  const readings = valueAt(document, ["readings"]);
  if (!Array.isArray(readings) || readings.length === 0) return [];
  const { ask, units, issues } = worksheetAskOf(document, []);
  if (ask === null || units === null || issues.length > 0 || ask.readings.length === 0) return [];
  const { points, moves } = readingMoves(ask);
  const places = new Map(
    points.flatMap(({ point, at }): [string, KeyPath][] => {
      const path = pathOfPoint(point, document);
      if (path === null) return [];
      const stands = at.every((mm, axis) => {
        const typed = lengthAt(document, [...path, axis], units);
        return typed !== null && Math.abs(typed - mm) <= STANDS;
      });
      return stands ? [[point, path]] : [];
    }),
  );
  return moves.flatMap(({ reading, part, moves: moved }): readonly ReadInput[] => {
    if (reading.index < 0) return [];
    const path: KeyPath = ["readings", reading.index, part];
    const found = moved.flatMap(({ point, axis, by }) => {
      const at = places.get(point);
      return at && !told.has(keyText([...at, axis])) ? [{ path: [...at, axis], by }] : [];
    });
    if (found.length === 0) return [];
    const kind = reading.kind === "angle" ? "angle" : "length";
    return [{ path, key: keyText(path), kind, within: reading.within, source: "reading", moves: found }];
  });
}
