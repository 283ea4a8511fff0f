import type { Result } from "../../../setup/types/types.ts";
import type { TruckAnswer } from "../../../studies/wording/counterFacts.ts";
import { alignedTruck, boltedTruck, type Truck } from "../../state/truck.ts";
import type { Answered } from "../../work/answerCache.ts";

/** The truck with another hub face distance, mm, all else as it is; of an aligned one aligned anew. */
export function withHubFace(truck: Truck, hubFace: number): Result<Truck> {
  const { setup, file, isAligned } = truck.ask;
  const built = boltedTruck({ ...setup, knuckle: { ...setup.knuckle, hubFace } }, file);
  return built.ok && isAligned ? { ok: true, value: alignedTruck(built.value) } : built;
}

/** What a slider of hub faces runs over, in whole steps of `step` mm. */
export interface HubFaceRange {
  readonly step: number;
  readonly least: number;
  readonly most: number;
}

/** mm. How far past the two hub faces compared the slider goes. */
const PAST = 12.7;

/** From half an inch inside the narrower of two hub faces to half an inch outside the wider. @param step mm */
export function hubFaceRange(first: number, second: number, step: number): HubFaceRange {
  // A hair of rounding must not take an end off that lies on a step.
  const least = Math.ceil((Math.min(first, second) - PAST) / step - 1e-6);
  const most = Math.floor((Math.max(first, second) + PAST) / step + 1e-6);
  return { step, least: Math.max(1, least), most };
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
