import type { TruckAnswer } from "../../../studies/wording/counterFacts.ts";
import type { Answered } from "../../work/answerCache.ts";

/** Put together from its two answers; null = not asked for. */
export function truckAnswer(
  check: Answered<"check"> | null,
  heights: Answered<"heights"> | null,
): TruckAnswer {
  return {
    steering: heights?.answer?.steering ?? null,
    heights: heights?.answer?.heights ?? null,
    report: check?.answer ?? null,
    failure: check?.failure ?? heights?.failure ?? null,
  };
}
