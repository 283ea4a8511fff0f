import { solvePose } from "../../suspension/solvePose.ts";
import { airOf } from "../air/airOf.ts";
import { alignTruck } from "../alignment/alignSide.ts";
import { wholeSweep } from "../curves/wholeSweep.ts";
import { floorReport } from "../floor/floorReport.ts";
import { rollCoverage } from "../floor/rollCoverage.ts";
import { geometryReport } from "../geometry/geometryReport.ts";
import { limitsOf } from "../limits/limitsOf.ts";
import { mapReportOf } from "../map/mapReport.ts";
import type { Model } from "../model/model.ts";
import type { Budget } from "../numeric/budget.ts";
import { checkClearance } from "../reports/check.ts";
import { gapsAt } from "../reports/gapsAt.ts";
import { formatOf } from "../wording/lengths.ts";
import { unusualDoubts } from "../wording/unusualReport.ts";
import { airJson } from "./airJson.ts";
import { alignJson } from "./alignJson.ts";
import { checkJson } from "./checkJson.ts";
import { documentText } from "./documentText.ts";
import { floorJson } from "./floorJson.ts";
import { geometryJson } from "./geometryJson.ts";
import { limitsJson } from "./limitsJson.ts";
import { mapCsv } from "./mapCsv.ts";
import { mapJson } from "./mapJson.ts";
import { poseJson } from "./poseJson.ts";
import { sweepCsv } from "./sweepCsv.ts";
import { sweepJson } from "./sweepJson.ts";

/** Rows and columns of a map, and rows of the geometry's tables, when nobody says: they fit a line and a screen of a terminal. */
export const MAP_ROWS = 15;
export const MAP_COLS = 11;
export const GEOMETRY_ROWS = 9;

/** A document that a truck alone answers: what the verb of that name prints with `--json`, or `--csv`. */
export type ReportAsk =
  | {
      readonly of:
        | "check"
        | "map"
        | "map csv"
        | "sweep"
        | "sweep csv"
        | "limits"
        | "geometry"
        | "floor"
        | "air"
        | "align";
    }
  | { readonly of: "pose"; readonly travel: number; readonly steer: number };

/**
 * The document as text, the very same as the command line prints when nothing more is asked of it.
 * @returns null where there is no answer: no air spring, a pose out of reach, a stance to align at that is
 */
export function reportText(model: Model, ask: ReportAsk, budget: Budget): string | null {
  const document = documentOf(model, ask, budget);
  if (document === null || typeof document === "string") return document;
  return documentText(document, { model, unusual: unusualDoubts(model, formatOf(model.setup)) });
}

function documentOf(model: Model, ask: ReportAsk, budget: Budget): object | string | null {
  const { units } = model.setup;
  switch (ask.of) {
    case "check":
      return checkJson(checkClearance(model, { budget }), units, rollCoverage(model));
    case "map":
    case "map csv": {
      const report = mapReportOf(model, { rows: MAP_ROWS, cols: MAP_COLS, budget });
      return ask.of === "map" ? mapJson(report, model) : mapCsv(report, model);
    }
    case "sweep":
      return sweepJson(wholeSweep(model, undefined, budget), units);
    case "sweep csv":
      return sweepCsv(wholeSweep(model, undefined, budget), model);
    case "limits":
      return limitsJson(limitsOf(model, budget), units);
    case "geometry":
      return geometryJson(geometryReport(model, GEOMETRY_ROWS), units);
    case "floor":
      return floorJson(floorReport(model, model.setup.roll, budget), model.setup);
    case "air": {
      const report = airOf(model);
      return report && airJson(report, units);
    }
    case "align": {
      const found = alignTruck(model);
      return found.ok ? alignJson(found.alignment, units, model.setup.alignment) : null;
    }
    case "pose": {
      const pose = solvePose(model.frontEnd, ask.travel, ask.steer);
      return pose.ok ? poseJson(pose, gapsAt(model, pose, budget), model) : null;
    }
  }
}
