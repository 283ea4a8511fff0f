import type { Gauge } from "../../setup/worksheet/worksheetState.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { listWords } from "./asBuiltWords.ts";
import { amountText } from "./lengths.ts";

/** What is said of a line of the worksheet. */
export interface LineWords {
  readonly name: string;
  /** Where each end of the tape is held, in a sentence or two. */
  readonly how: string;
}

/** Ways to read more than a worksheet asks for by itself. */
export const GAUGE_WAYS = {
  stick: {
    name: "Fender lip along a level stick",
    about: "Height and inset at seven stations: the whole arch.",
  },
  photo: { name: "Fender arch from a side photo", about: "Traced over a picture that stays on this device." },
  tire: {
    name: "Tire by calipers",
    about: "Diameter, section, tread width and shoulder drop in place of its size.",
  },
  wheel: { name: "Wheel by straightedge", about: "Lip to lip and backspacing." },
  plumb: {
    name: "Plumb bob mark on the floor",
    about: "A point let down to the floor, and tapes from mark to mark.",
  },
  scan: { name: "Scan on matched points", about: "A mesh put in place, with how far each point is off." },
} as const;

/** What a reading of several numbers is called, and how it is taken. */
export const GAUGE_LINES: Readonly<Record<Gauge, LineWords>> = {
  stick: {
    name: "Fender lip at stations along a level stick",
    how: "A straight stick along the truck beside the wheel, level, on blocks. At each station measure from the stick's upper edge up to the lip, and from its inboard edge in to it. Ahead: along the stick from over the axle; behind is less than 0. Leave out what you cannot reach.",
  },
  plumb: {
    name: "Plumb bob",
    how: "Let the bob hang still, its line at the point's center, and mark the floor under it. Tapes along the floor are easier than tapes under the truck.",
  },
};

/** Columns of a stick's stations. */
export const STATION_COLUMNS = ["ahead", "up", "in"] as const;

/** Where a stick lies. */
export const STICK_WORDS = {
  offset: "Stick's inboard edge, out from the centerline",
  height: "Stick's upper edge, up from the floor",
} as const;

/** A station of a stick: `front end`, `over the axle`, or which it is. */
export function stationName(at: number, count: number): string {
  if (at === 0) return "front end";
  if (at === count - 1) return "rear end";
  return 2 * at === count - 1 ? "over the axle" : `station ${at + 1}`;
}

/** How well matched points of a scan go together. @param residuals of each, mm */
export function scanFitSentence(residuals: readonly number[], format: LengthFormat): string {
  const each = listWords(residuals.map((mm, i) => `point ${i + 1} by ${amountText(mm, format)}`));
  return `Fitted by least squares, the matched points come out off their places on the truck: ${each}. A point an inch off is the wrong point, or the scan is in another unit.`;
}

/** What a mark on the floor is called. */
export function markName(mark: string): string {
  return `mark ${mark}`;
}
