import * as z from "zod";
import { block, list, oneOfBlocks } from "../fields/blockFields.ts";
import { lengthField, quantityField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_CHART } from "../reading/limits.ts";
import type { AirCurve } from "../types/airTypes.ts";

const loadsField = block(
  "the maker's chart: load by height and gauge pressure, straight between its points",
  {
    kind: z.literal("loads").meta({ description: "load by height and pressure" }),
    pressures: list(
      "gauge pressures of the chart's columns, rising",
      quantityField("gauge pressure of a column", "pressure", "notNegative"),
      { most: MAX_CHART },
    ),
    rows: list(
      "rows of the chart, heights rising",
      block("loads at one height", {
        height: lengthField("height of the spring, mount to mount", "positive"),
        loads: list("load at each of the pressures", quantityField("load", "load", "notNegative")),
      }),
      { most: MAX_CHART },
    ),
  },
);

const areaField = block("effective area by height: load = gauge pressure × effective area", {
  kind: z.literal("area").meta({ description: "effective area by height" }),
  areas: list(
    "effective areas, heights rising, straight between them; one row = the same at every height",
    block("effective area at one height", {
      height: lengthField("height of the spring, mount to mount", "positive"),
      area: quantityField("effective area: load ÷ gauge pressure", "area"),
    }),
    { most: MAX_CHART },
  ),
});

/** What the spring carries, as typed. */
export const airCurveField = oneOfBlocks(
  "what the spring carries by height and pressure",
  "kind",
  ["loads", "area"],
  [loadsField, areaField],
);

/** The curve in mm, N, MPa and mm². Refuses tables that do not rise. */
export function resolveAirCurve(typed: z.infer<typeof airCurveField>, reading: BlockReading): AirCurve {
  if (typed.kind === "area") {
    const heights = risingHeights(typed.areas, "areas", 1, reading);
    return { kind: "area", heights, areas: typed.areas.map(({ area }) => reading.quantity(area, "area")) };
  }
  const heights = risingHeights(typed.rows, "rows", 2, reading);
  const pressures = typed.pressures.map((pressure) => reading.quantity(pressure, "pressure"));
  if (pressures.length < 2) reading.issue(["pressures"], typed.pressures, "must have at least two pressures");
  pressures.forEach((pressure, i) => {
    if (i > 0 && !(pressure > pressures[i - 1]!))
      reading.issue(["pressures", i], typed.pressures[i], "must be more than the pressure before it");
  });
  const loads = typed.rows.flatMap((row, i) => {
    if (row.loads.length !== pressures.length) {
      const mend = `must have one load for each of the ${pressures.length} pressures`;
      reading.issue(["rows", i, "loads"], row.loads, mend);
    }
    const values = row.loads.map((load) => reading.quantity(load, "load"));
    values.forEach((load, k) => {
      if (k > 0 && !(load > values[k - 1]!))
        reading.issue(["rows", i, "loads", k], row.loads[k], "must be more than at the pressure before it");
    });
    return values;
  });
  return { kind: "loads", heights, pressures, loads };
}

function risingHeights(
  rows: readonly { readonly height: number | string }[],
  key: "rows" | "areas",
  least: 1 | 2,
  reading: BlockReading,
): number[] {
  if (rows.length < least)
    reading.issue([key], rows, `must have at least ${least === 1 ? "one row" : "two rows"}`);
  const heights = rows.map(({ height }, i) => reading.length(height, key, i, "height"));
  heights.forEach((height, i) => {
    if (i > 0 && !(height > heights[i - 1]!))
      reading.issue([key, i, "height"], rows[i]!.height, "must be more than the height before it");
  });
  return heights;
}
