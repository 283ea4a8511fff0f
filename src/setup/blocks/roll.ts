import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { angleField, lengthField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { RollSetup } from "../types/floorTypes.ts";

/** What the body does over its front wheels, as typed. */
export const rollField = block("body roll and one wheel over a curb, to be checked at every stance", {
  most: angleField("body roll each way to be checked, degrees", { above: 0, below: 45 }),
  curb: lengthField(
    "how far one wheel alone is lifted above the stance, such as over a curb; left out: not checked",
    "positive",
  ).optional(),
});

export type RollAsTyped = z.infer<typeof rollField>;

/** The block in mm and radians; null = the setup has none. */
export function resolveRoll(typed: RollAsTyped | undefined, reading: BlockReading): RollSetup | null {
  if (typed === undefined) return null;
  return { most: reading.angle(typed.most), curb: reading.lengthOr(null, typed.curb, "curb") };
}
