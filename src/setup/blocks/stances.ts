import type * as z from "zod";
import { block, list } from "../blockFields.ts";
import type { BlockReading } from "../blockReading.ts";
import { lengthField, textField } from "../fields.ts";
import type { StanceSetup } from "../types.ts";
import { refuseRepeatedNames } from "./repeatedNames.ts";

/** Named heights, as typed. */
export const stancesField = list(
  "heights with a name; default none",
  block("a height with a name", {
    name: textField("name of the stance, unique in the setup"),
    travel: lengthField("wheel travel at this height, + = bump"),
  }),
);

export type StancesAsTyped = z.infer<typeof stancesField>;

/** The stances in mm. */
export function resolveStances(typed: StancesAsTyped, reading: BlockReading): readonly StanceSetup[] {
  const stances = typed.flatMap((stance, i) =>
    reading.isSound(i) ? [{ name: stance.name, travel: reading.length(stance.travel, i, "travel") }] : [],
  );
  refuseRepeatedNames(typed, reading);
  return stances;
}
