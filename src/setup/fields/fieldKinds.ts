import * as z from "zod";
import type { Quantity } from "../../units/quantity.ts";

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
