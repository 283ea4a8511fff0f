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
