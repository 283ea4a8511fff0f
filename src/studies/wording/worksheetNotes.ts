import type { Progress } from "../../setup/worksheet/worksheetState.ts";
import { listWords, lower } from "./nameWords.ts";
import { LINES } from "./worksheetWords.ts";

/** How far a worksheet is: `7 of 12 read; 5 more needed for a first verdict`, or which ones where others are many. @param isWaiting there is no verdict before */
export function progressWords(
  { read, needed, missing, musts, listed }: Progress,
  isWaiting: boolean,
): string {
  if (isWaiting && read + missing > needed) {
    const names = musts.map((key) => `“${lower(LINES[key]?.name ?? key)}”`);
    return `${read} read; a first verdict still needs ${listWords(names)}`;
  }
  if (isWaiting) return `${read} of ${needed} read; ${missing} more needed for a first verdict`;
  const left = listed - read;
  return left > 0
    ? `${countOf(read, "reading")}; ${left} of the list not read`
    : `All ${countOf(read, "reading")} are in`;
}

/** In place of a verdict while there are too few readings for one. */
export function noVerdictYet(progress: Progress): string {
  return `No verdict yet: ${progressWords(progress, true)}. Until then the truck drawn is assumed, except for what was read.`;
}

/** Beside an answer that rests on readings, before the way to its odds. */
export const HOW_SURE = "How sure? This takes every reading as exact; each is good only to its ±.";

function countOf(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? "" : "s"}`;
}

/** What stands over the printed form. */
export const FORM_NOTES: readonly string[] = [
  "The truck on level ground, at the height it is to be measured at, tires at their pressure, wheels straight ahead. Never under a truck that a jack alone holds: stands under the frame, wheels chocked.",
  "Left side of the truck. Strike the centerline on the floor (halfway between marks dropped from both sides of the frame) and the axle line (through the marks under both wheel centers).",
  "Any order, any mix; leave out what you cannot reach. What you doubt, read again: a second reading of the same is welcome.",
];
