import * as z from "zod";
import type { NumberNature } from "../reading/withinOf.ts";
import { fieldKinds } from "./fieldKinds.ts";

/** What sort of number a field holds, which may be known only within some uncertainty; null = none, or a count. */
export function numberNature(schema: z.ZodType): NumberNature | null {
  const nature = fieldKinds.get(schema);
  if (nature === undefined) return schema instanceof z.ZodNumber && !schema.isInt ? { kind: "number" } : null;
  switch (nature.kind) {
    case "length":
    case "angle":
      return { kind: nature.kind };
    case "quantity":
      return { kind: "quantity", quantity: nature.quantity };
    default:
      return null;
  }
}
