import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { lengthField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { Setup } from "../types/types.ts";

/** The range of wheel travel, as typed. */
export const travelField = block(
  "range of the wheel center's vertical movement from where the truck was measured",
  {
    droop: lengthField("lowest wheel position, 0 or negative", "notPositive"),
    bump: lengthField("highest wheel position, 0 or positive", "notNegative"),
  },
);

export type TravelAsTyped = z.infer<typeof travelField>;

/** The range in mm. */
export function resolveTravel(typed: TravelAsTyped, reading: BlockReading): Setup["travel"] {
  return { droop: reading.length(typed.droop, "droop"), bump: reading.length(typed.bump, "bump") };
}
