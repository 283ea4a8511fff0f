import { exampleOf } from "../exampleMarks.ts";
import { isWithin } from "../types/keyPath.ts";
import type { Setup } from "../types/types.ts";
import { WORKSHEET_LINES } from "./worksheetLines.ts";

/** What `fromExample` names where a truck began as the assumed layout. */
export const ASSUMED_LAYOUT = "assumed layout";

/** Whether what nobody has measured of a document is the assumed layout's. */
export function isOnAssumedLayout(document: unknown): boolean {
  return exampleOf(document) === ASSUMED_LAYOUT;
}

/** How many numbers of a worksheet were read: its readings, and fields of it that somebody typed; what a variant tries is none. */
export function readCount({ readings, fromExample }: Setup): number {
  const fields = WORKSHEET_LINES.filter(
    ({ asks }) =>
      "field" in asks &&
      fromExample?.mineInAll.some((mine) => isWithin(mine, asks.field) || isWithin(asks.field, mine)),
  );
  return readings.length + fields.length;
}
