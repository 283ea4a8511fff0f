import type * as z from "zod";
import { block } from "../blockFields.ts";
import type { BlockReading } from "../blockReading.ts";
import { DEFAULT_TOE } from "../defaults.ts";
import { angleField } from "../fields.ts";
import type { Setup } from "../types.ts";

/** The static alignment, as typed. */
export const alignmentField = block("static alignment, at travel 0 and steer 0", {
  toe: angleField("toe per wheel, degrees, + = toe-in, set by tie rod length; default 0", {
    above: -45,
    below: 45,
  }).optional(),
});

export type AlignmentAsTyped = z.infer<typeof alignmentField>;

/** The alignment in radians, defaults filled in. */
export function resolveAlignment(
  typed: AlignmentAsTyped | undefined,
  reading: BlockReading,
): Setup["alignment"] {
  return { toe: typed?.toe === undefined ? DEFAULT_TOE : reading.angle(typed.toe) };
}
