import * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { BoxPart } from "../types/types.ts";
import { bodyPartFields, resolvePartNaming } from "./bodyPartNaming.ts";

/** A box, as typed. */
export const boxField = block("a solid box with its edges along the vehicle axes", {
  ...bodyPartFields,
  kind: z.literal("box").meta({ description: "a solid box" }),
  min: pointField("corner with the least x, y and z, vehicle axes"),
  max: pointField("corner with the greatest x, y and z, vehicle axes"),
});

export type BoxAsTyped = z.infer<typeof boxField>;

/** The box in mm. Refuses one without thickness. */
export function resolveBox(typed: BoxAsTyped, reading: BlockReading): BoxPart {
  const min = reading.point(typed.min, "min");
  const max = reading.point(typed.max, "max");
  for (const axis of [0, 1, 2] as const) {
    if (min[axis] < max[axis]) continue;
    reading.issue(["max", axis], typed.max[axis], `must be more than min[${axis}]`);
  }
  return { ...resolvePartNaming(typed), kind: "box", min, max };
}
