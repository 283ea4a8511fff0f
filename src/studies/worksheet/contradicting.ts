import { setAt } from "../../setup/reading/setAt.ts";
import { valueAt } from "../../setup/types/keyPath.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { ASSUMED_POINTS, ASSUMED_WITHIN } from "../measure/assumedTruck.ts";
import { measureTruck } from "../measure/measureTruck.ts";
import { withReadings } from "./withReadings.ts";
import { worksheetAskOf } from "./worksheetAskOf.ts";

/** Squares of how far a truck's points lie from the assumed ones, over their spread: two trucks nearer than this are as likely. */
const ALIKE = 4;

/**
 * Of a truck that its readings put in places in which it does not go together, the readings without any one of which it does,
 * but for those without which it would be far from any truck: positions in the list, from 0. Empty where no single one is in
 * the way, and for what is no worksheet.
 * @param fits whether a truck can be made of a document
 */
export function contradicting(document: unknown, fits: (document: unknown) => boolean): readonly number[] {
  const readings = valueAt(document, ["readings"]);
  if (!isOnAssumedLayout(document) || !Array.isArray(readings)) return [];
  const without = (at: number) => setAt(document, ["readings", at, "leftOut"], true);
  const found = [...readings.keys()].filter((at) => {
    const reading: unknown = readings[at];
    if (valueAt(reading, ["leftOut"]) === true || !isRead(reading)) return false;
    return fits(withReadings(without(at)));
  });
  if (found.length < 2) return found;
  const strange = found.map((at) => strangeness(without(at)));
  const least = Math.min(...strange);
  return found.filter((_, i) => strange[i]! <= least + ALIKE);
}

/** How far the truck of a document's readings is from the assumed one. */
function strangeness(document: unknown): number {
  const { ask } = worksheetAskOf(document, []);
  if (ask === null) return 0;
  return measureTruck(ask).points.reduce((sum, { point, at }) => {
    const assumed = ASSUMED_POINTS.get(point);
    return sum + (assumed ? at.reduce((all, v, i) => all + ((v - assumed[i]!) / ASSUMED_WITHIN) ** 2, 0) : 0);
  }, 0);
}

function isRead(reading: unknown): boolean {
  const is = valueAt(reading, ["is"]);
  return (is !== undefined && is !== "") || valueAt(reading, ["stations"]) !== undefined;
}
