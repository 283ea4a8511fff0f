import type { LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import type { ReachLimit } from "../reports/reachLimits.ts";
import { heightWords, lockWords, safeTravelWords } from "./poseWords.ts";

/** Where one joint cannot follow, in one plain sentence. */
export function limitSentence(limit: ReachLimit, model: Model, format: LengthFormat): string {
  const joint = `The ${limit.side} ${limit.joint}`;
  if (limit.along === "travel") {
    return `${joint} cannot follow past ${safeTravelWords(limit.startsAt, format)}.`;
  }
  const tightest = heightWords(limit.travel, model, format);
  return `${joint} cannot follow past ${lockWords(limit.startsAt)}, tightest ${tightest}.`;
}
