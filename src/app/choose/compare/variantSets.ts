import { valueAt } from "../../../setup/types/keyPath.ts";
import { variantSetsSentence } from "../../../studies/wording/variantWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { NamedTruck } from "./useVariantTrucks.ts";

/**
 * What each variant sets, and what that comes to beside the truck as it is now, a sentence each. Both are read of the document that
 * the trucks were made of: the one on the board may be a step ahead. @param columns the setup as it stands, then its variants
 */
export function setsOf(columns: readonly NamedTruck[], format: LengthFormat): readonly string[] {
  const current = columns[0]?.truck ?? null;
  const variants = valueAt(current?.document, ["variants"]);
  if (current === null || !Array.isArray(variants)) return [];
  return columns.flatMap(({ variant, truck }) => {
    if (variant === null || truck === null) return [];
    const own: unknown = variants.find((one: unknown) => valueAt(one, ["name"]) === variant);
    const patch = valueAt(own, ["patch"]);
    const sentence = variantSetsSentence({ name: variant, patch }, truck.model, current.model, format);
    return sentence === "" ? [] : [sentence];
  });
}
