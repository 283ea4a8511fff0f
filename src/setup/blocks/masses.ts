import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { quantityField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { MassesSetup } from "../types/airTypes.ts";

/** Weights at the front wheels, as typed. */
export const massesField = block("weights at the front wheels", {
  corner: quantityField("what a scale under the left front wheel shows at the measured height", "weight"),
  cornerRight: quantityField("the same under the right front wheel; default as corner", "weight").optional(),
  unsprung: quantityField(
    "what of it does not ride on the spring, each side: wheel, tire, brake, knuckle and about half the arms",
    "weight",
    "notNegative",
  ),
});

export type MassesAsTyped = z.infer<typeof massesField>;

/** The block in kg; null = the setup has none. */
export function resolveMasses(typed: MassesAsTyped | undefined, reading: BlockReading): MassesSetup | null {
  if (typed === undefined) return null;
  const corner = reading.quantity(typed.corner, "weight");
  const cornerRight =
    typed.cornerRight === undefined ? corner : reading.quantity(typed.cornerRight, "weight");
  const unsprung = reading.quantity(typed.unsprung, "weight");
  if (!(unsprung < Math.min(corner, cornerRight)))
    reading.issue(
      ["unsprung"],
      typed.unsprung,
      "must be less than corner: the rest of it rides on the spring",
    );
  return { corner, cornerRight, unsprung };
}
