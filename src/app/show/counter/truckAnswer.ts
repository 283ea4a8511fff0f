import type { HeightStop } from "../../../studies/limits/heightWay.ts";
import type { NoLimits, SteerLimits } from "../../../studies/map/steerLimits.ts";
import type { CheckReport } from "../../../studies/reports/check.ts";
import type { Answered } from "../../work/answerCache.ts";

/** What is known of one truck so far. */
export interface TruckAnswer {
  /** At each height asked for; null = not known yet. */
  readonly steering: readonly (SteerLimits | NoLimits)[] | null;
  /** What keeps the truck from each height asked for, null = it stands there; null = not known yet. */
  readonly heights: readonly (HeightStop | null)[] | null;
  /** Over the whole range; null = not known yet. */
  readonly report: CheckReport | null;
  /** Why there will be no more; null = all is well. */
  readonly failure: string | null;
}

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
