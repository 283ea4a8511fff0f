/**
 * `wellsweep`: from the text of a setup to its answer, in a few calls. What is asked less often is in `wellsweep/setup`,
 * `wellsweep/studies` and `wellsweep/files`. Millimeters and radians in vehicle axes (X forward, Y left, Z up) unless a
 * name says otherwise.
 */

export { formatIssue } from "../setup/reading/formatIssue.ts";
export type { Result, SetupIssue } from "../setup/types/types.ts";
export { type MapReport, mapReportOf } from "../studies/map/mapReport.ts";
export type { Model } from "../studies/model/model.ts";
export { type CheckReport, checkClearance } from "../studies/reports/check.ts";
export { gapsAt } from "../studies/reports/gapsAt.ts";
export { solvePose } from "../suspension/solvePose.ts";
export { type OpenOptions, openTruck } from "./openTruck.ts";
export { mapText, poseText, verdictText } from "./texts.ts";
