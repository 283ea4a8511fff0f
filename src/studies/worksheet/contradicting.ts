import { setAt } from "../../setup/reading/setAt.ts";
import { valueAt } from "../../setup/types/keyPath.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import { withReadings } from "./withReadings.ts";

/**
 * Of a truck that its readings put in places in which it does not go together, the readings without any one of which it does:
 * positions in the list, from 0. Empty where no single one is in the way, and for what is no worksheet.
 * @param fits whether a truck can be made of a document
 */
export function contradicting(document: unknown, fits: (document: unknown) => boolean): readonly number[] {
  const readings = valueAt(document, ["readings"]);
  if (!isOnAssumedLayout(document) || !Array.isArray(readings)) return [];
  return [...readings.keys()].filter((at) => {
    const reading: unknown = readings[at];
    if (valueAt(reading, ["leftOut"]) === true || !isRead(reading)) return false;
    return fits(withReadings(setAt(document, ["readings", at, "leftOut"], true)));
  });
}

function isRead(reading: unknown): boolean {
  const is = valueAt(reading, ["is"]);
  return (is !== undefined && is !== "") || valueAt(reading, ["stations"]) !== undefined;
}
