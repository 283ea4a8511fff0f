import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import type { EnvelopeRange } from "../envelope/envelopeRange.ts";
import { reachableTravel } from "../envelope/envelopeRange.ts";
import type { Model } from "../model/model.ts";
import { setupHeading } from "../wording/answerWords.ts";
import { CAUTIONS } from "../wording/cautions.ts";
import { formatOf } from "../wording/lengths.ts";
import { rangeWords } from "../wording/poseWords.ts";

/** What a file of an envelope says it is. */
export function envelopeAbout(model: Model, range: EnvelopeRange): string {
  const { setup } = model;
  return `${setupHeading(setup)}: space swept by tire and rim ${rangeWords(range, model, formatOf(setup))}`;
}

/** The cautions of such a file, in one line. */
export const ENVELOPE_CAUTIONS = CAUTIONS.trimEnd().replaceAll("\n", " ");

/** The pose of a range nearest to the measured height, straight ahead: what a drawing shows of tire and rim. */
export function homePose(model: Model, range: EnvelopeRange): SolvedPose | null {
  const travel = reachableTravel(model, range);
  if (travel === null) return null;
  const nearest = (low: number, high: number) => Math.min(Math.max(0, low), high);
  const pose = solvePose(
    model.frontEnd,
    nearest(travel.low, travel.high),
    nearest(range.steerLow, range.steerHigh),
  );
  return pose.ok ? pose : null;
}
