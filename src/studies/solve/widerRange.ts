import type { WindowField } from "../window/windowField.ts";
import type { SolveReport } from "./solveTypes.ts";

/** Share of a range by which an end of what may be held is kept off. */
const SLACK = 1e-9;

/** Share of a range within which a value stands at its end: a step of a march, or of the looks at a gap. */
const AT_END = 1 / 7;

/**
 * A range twice as wide, past the end at which what comes nearest stands, as far as the file may hold; null = a value was
 * found, the nearest stands inside, as where the linkage ends, or there is no more to look at.
 */
export function widerRange(
  { least, most, now }: Pick<WindowField, "least" | "most" | "now">,
  { from, to }: { readonly from: number; readonly to: number },
  { found, nearest, isUnmoved }: Pick<SolveReport, "found" | "nearest" | "isUnmoved">,
): { readonly from: number; readonly to: number } | null {
  if (found.length > 0 || nearest === null || isUnmoved) return null;
  const wide = to - from;
  // An end of what may be held is perhaps not allowed itself.
  const slack = SLACK * Math.max(wide, Math.abs(now));
  const high = Math.min(to + wide, most - slack);
  const low = Math.max(from - wide, least + slack);
  if (to - nearest.value <= AT_END * wide && high > to + slack) return { from, to: high };
  return nearest.value - from <= AT_END * wide && low < from - slack ? { from: low, to } : null;
}
