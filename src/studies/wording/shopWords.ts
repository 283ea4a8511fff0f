import type { AddedFits } from "../chart/addFits.ts";

/** What may be pasted where one wheel is typed. @param by what the mounting face is told by there */
export function pasteHint(by: "backspacing" | "offset"): string {
  return `Several at once: paste them into any of these fields, a line each of tire size, rim width, ${by} and name.`;
}

/** What a wheel's mounting face is told by, where nothing was typed: how to come by it. */
export function faceMissing(by: "backspacing" | "offset"): string {
  const how =
    by === "backspacing"
      ? "a straightedge over the rim’s inner edge, from there to the face that bolts on"
      : "often stamped on the wheel; + where the face that bolts on is outboard of the rim’s middle";
  return `required: ${how}. Not known? The fit chart at Choose shows which clear`;
}

/** Faults of this many lines are told; the rest are counted. */
const MOST_TOLD = 3;

/** What became of lines that were pasted: `2 added. Not added: “P235/70R15, 8” (backspacing required).` */
export function pastedText({ added, faults }: Pick<AddedFits, "added" | "faults">): string {
  if (faults.length === 0) return `${added} added.`;
  const told = faults.slice(0, MOST_TOLD).map(({ line, mend }) => `“${line.trim().slice(0, 60)}” (${mend})`);
  const more = faults.length > MOST_TOLD ? ` and ${faults.length - MOST_TOLD} more` : "";
  return `${added} added. Not added: ${told.join("; ")}${more}.`;
}
