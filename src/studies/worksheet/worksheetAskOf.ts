import { withRead } from "../../setup/exampleMarks.ts";
import type { Reading } from "../../setup/types/readingTypes.ts";
import { isOnAssumedLayout } from "../../setup/worksheet/assumedLayout.ts";
import type { Ask } from "../measure/ask.ts";
import { ASSUMED_LIP_POINTS } from "../measure/assumedTruck.ts";
import { pointsOf } from "../measure/equations.ts";
import { type DocumentToMeasure, measureAskOf } from "../measure/measureAskOf.ts";

/**
 * What a setup with a worksheet is measured from. What its readings told before is no number that it has already: else each
 * reading would be held back by the one before it. On the assumed layout the fender's lip is part of that, and is read at its
 * stations: these join the readings, as `STATION` in place of a position in the list.
 */
export function worksheetAskOf(document: unknown, candidates: readonly Ask[]): DocumentToMeasure {
  const asked = measureAskOf(withRead(document, []), "", null, candidates);
  if (asked.ask === null || !isOnAssumedLayout(document)) return asked;
  const { readings } = asked.ask;
  return {
    ...asked,
    ask: { ...asked.ask, readings: [...readings, ...stationsOf(readings)], hasBody: false },
  };
}

/** What stands for a position in the list where a reading is a station of the lip, struck on the floor. */
export const STATION = -1;

/** mm, one standard deviation: a chalk mark, and the bob over it. */
const STATION_WITHIN = 1.5;

/** How far ahead of the axle line the points of the assumed lip are that any reading goes to; a stick tells that itself. */
function stationsOf(readings: readonly Reading[]): readonly Reading[] {
  const named = new Set(
    readings.flatMap((reading) =>
      reading.kind === "between" ? reading.points : "point" in reading ? [reading.point] : [],
    ),
  );
  const alongStick = new Set(readings.flatMap((one) => (one.kind === "stations" ? pointsOf(one) : [])));
  return [...ASSUMED_LIP_POINTS].flatMap(([point, [is]]): readonly Reading[] =>
    named.has(point) && !alongStick.has(point)
      ? [
          {
            kind: "ahead",
            index: STATION,
            side: "left",
            from: "centerline",
            point,
            is,
            within: STATION_WITHIN,
          },
        ]
      : [],
  );
}
