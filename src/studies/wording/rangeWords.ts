import type { LengthFormat } from "../../units/formatLength.ts";
import type { EnvelopeRange } from "../envelope/envelopeRange.ts";
import type { Model } from "../model/model.ts";
import { heightWords, isStraight, lockWords } from "./poseWords.ts";

/** `over all travel, lock to lock`; `at the "aired out" stance, wheels straight ahead`. */
export function rangeWords(range: EnvelopeRange, model: Model, format: LengthFormat): string {
  const heights =
    range.travelLow < range.travelHigh ? "over all travel" : heightWords(range.travelLow, model, format);
  const steers = range.steerLow < range.steerHigh ? "lock to lock" : steerWords(range.steerLow);
  return `${heights}, ${steers}`;
}

function steerWords(steer: number): string {
  return isStraight(steer) ? "wheels straight ahead" : `at ${lockWords(steer)}`;
}
