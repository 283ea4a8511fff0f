import * as z from "zod";
import type { Quantity } from "../../units/quantity.ts";
import type { NumberNature } from "../reading/withinOf.ts";

/** Which signs a length may have. */
export type Sign = "any" | "positive" | "notNegative" | "notPositive";

/** Degrees an angle must lie strictly between. */
export interface DegreeRange {
  readonly above: number;
  readonly below: number;
}

/** What a field holds, beyond its JSON type: told apart by whoever draws it or reads what is typed into it. */
export type FieldNature =
  | { readonly kind: "length"; readonly sign: Sign }
  | { readonly kind: "angle"; readonly degrees: DegreeRange }
  | { readonly kind: "point" }
  | { readonly kind: "numbers" }
  | { readonly kind: "quantity"; readonly quantity: Quantity; readonly sign: Sign }
  | { readonly kind: "text" }
  | { readonly kind: "choice"; readonly words: readonly string[] };

/** The nature of every field made by `fields.ts`, by its schema. No part of the published JSON Schema. */
export const fieldKinds = z.registry<FieldNature>();

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
