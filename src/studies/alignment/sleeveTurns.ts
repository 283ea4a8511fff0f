import type { ThreadCallout } from "../../units/threadCallout.ts";

/** Turns of a sleeve with a right-hand thread at one end and a left-hand one at the other: two pitches each. @param change mm, + = longer */
export function sleeveTurns(change: number, { pitch }: Pick<ThreadCallout, "pitch">): number {
  return change / (2 * pitch);
}
