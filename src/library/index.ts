/**
 * `wellsweep`: from the text of a setup to its answer, in a few calls. What is asked less often is in `wellsweep/setup`,
 * `wellsweep/studies` and `wellsweep/files`. Millimeters and radians in vehicle axes (X forward, Y left, Z up) unless a
 * name says otherwise.
 */

import type { LoadedMeshes } from "../setup/reading/blockReading.ts";
import { readSetup } from "../setup/readSetup.ts";
import type { Result } from "../setup/types/types.ts";
import { modelAsked } from "../studies/alignment/modelAsked.ts";
import type { MapReport } from "../studies/map/mapReport.ts";
import type { Model } from "../studies/model/model.ts";
import type { CheckReport } from "../studies/reports/check.ts";
import { gapsAt } from "../studies/reports/gapsAt.ts";
import { formatOf } from "../studies/wording/lengths.ts";
import { mapSentence } from "../studies/wording/mapSentence.ts";
import { poseSentence } from "../studies/wording/poseSentence.ts";
import { verdictSentence } from "../studies/wording/verdictSentence.ts";
import type { ApartPose, OutOfReach, SolvedPose } from "../suspension/solvePose.ts";
import type { LengthFormat } from "../units/formatLength.ts";

export { formatIssue } from "../setup/reading/issueList.ts";
export type { Result, SetupIssue } from "../setup/types/types.ts";
export { type MapReport, mapReportOf } from "../studies/map/mapReport.ts";
export type { Model } from "../studies/model/model.ts";
export { type CheckReport, checkClearance } from "../studies/reports/check.ts";
export { gapsAt } from "../studies/reports/gapsAt.ts";
export { solvePose } from "../suspension/solvePose.ts";

export interface OpenOptions {
  /** What issues call the setup. Default "setup". */
  readonly file?: string;
  /** Name of a variant; null = the setup as it stands. Default null. */
  readonly variant?: string | null;
  /** Align the truck to the setup's targets first, as near as its adjusters go. Default no. */
  readonly isAligned?: boolean;
  /** Mesh files that the setup names, read already (`readMesh`). Default none. */
  readonly meshes?: LoadedMeshes;
}

/**
 * Reads the text of a setup file and puts its truck together.
 * @returns the truck, or every issue found. Never throws: a mistake in the text is an issue.
 */
export function openTruck(text: string, options: OpenOptions = {}): Result<Model> {
  const { file = "setup", variant = null, isAligned = false, meshes } = options;
  const read = readSetup(text, file, variant, meshes);
  return read.ok ? modelAsked({ setup: read.value.setup, file, isAligned }) : read;
}

/** A check in one sentence. @param format how lengths are written; default the setup's own units */
export function verdictText(
  model: Model,
  report: CheckReport,
  format: LengthFormat = formatOf(model.setup),
): string {
  return verdictSentence(report, model, format);
}

/** What touches what at one pose, in a sentence. @param format how lengths are written; default the setup's own units */
export function poseText(
  model: Model,
  pose: SolvedPose | ApartPose | OutOfReach,
  format: LengthFormat = formatOf(model.setup),
): string {
  return poseSentence(pose.ok ? gapsAt(model, pose) : [], pose, model, format);
}

/** How far it steers and how low it goes, in words; lengths in the setup's own units. */
export function mapText(model: Model, report: MapReport): string {
  return mapSentence(report, model);
}
