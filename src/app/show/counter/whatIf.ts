import type { Result } from "../../../setup/types/types.ts";
import type { TruckAnswer } from "../../../studies/wording/counterFacts.ts";
import { alignedTruck, boltedTruck, type Truck } from "../../state/truck.ts";
import type { Answered } from "../../work/answerCache.ts";

/** What a setup is called and how it was written, which changes nothing of the truck. */
const NAMES: ReadonlySet<string> = new Set([
  "name",
  "variant",
  "variantNames",
  "fromExample",
  "within",
  "confirmed",
]);

/** Whether two trucks are one in every number, whatever their variants are called. */
export function isSameTruck({ setup: a }: Pick<Truck, "setup">, { setup: b }: Pick<Truck, "setup">): boolean {
  if (a === b) return true;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every(
    (key) => NAMES.has(key) || isAlike(a[key as keyof typeof a], b[key as keyof typeof b]),
  );
}

function isAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  // A scan has millions of numbers: their places as keys would hold the page for most of a second.
  if (isNumbers(a) && isNumbers(b)) return a.length === b.length && a.every((one, i) => one === b[i]);
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) =>
    isAlike((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}

function isNumbers(one: object): one is Float64Array | Uint32Array {
  return one instanceof Float64Array || one instanceof Uint32Array;
}

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
