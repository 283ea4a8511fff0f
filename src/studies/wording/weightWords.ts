import type { LengthUnit } from "../../setup/types/types.ts";
import { quantityInUnits } from "../../units/quantity.ts";
import type { VariantWeight } from "../strength/variantWeights.ts";
import { truckName } from "./truckName.ts";

/** A weight to a tenth: `8.7 lb`. @param kg */
export function weightText(kg: number, units: LengthUnit): string {
  return `${quantityInUnits(kg, "weight", units).toFixed(1)} ${units === "in" ? "lb" : "kg"}`;
}

/** What a variant is called where all are told: `Current truck`, `“lighter posts”`. */
export function variantTitle(name: string | null): string {
  return name === null ? capitalized(truckName(null)) : `“${name}”`;
}

/** What a variant's knuckle weighs against the setup without a variant: `1.4 lb less than the current truck’s`. */
export function weightDifference({ name, mass, more }: VariantWeight, units: LengthUnit): string {
  if (mass === null) return "no members, plates or pin to weigh";
  if (name === null) return "what the others are weighed against";
  if (more === null) return `the ${truckName(null)} has nothing to weigh it against`;
  const size = weightText(Math.abs(more), units);
  // What reads as nothing is nothing.
  if (Number.parseFloat(size) === 0) return `the same as the ${truckName(null)}’s`;
  return `${size} ${more < 0 ? "less" : "more"} than the ${truckName(null)}’s`;
}

/** Its effect on what does not ride on the spring; null = the setup does not say how much that is. */
export function unsprungSentence({ unsprung }: VariantWeight, units: LengthUnit): string | null {
  return unsprung === null ? null : `Unsprung weight of a side: ${weightText(unsprung, units)}.`;
}

/** Loose checks of a part's weight against what such parts commonly weigh (common practice, no source). */
export const WEIGHTS_COMMON =
  "For comparison, common practice, no source: a stock knuckle with its arm about 11 1/2 lb, a cast or forged drop knuckle 20 to 23 lb, a tubular one about 9 lb.";

/** What a weight is of, and what is left out. */
export const WEIGHTS_HOW =
  "Weights are worked out from the lengths, cross-sections and pin steps of the build block, all as steel; notches, weld metal, ball joints and bolts are left out. Unsprung weight is the setup’s (masses), changed by what the part weighs more or less. A lighter part is not a stronger one.";

function capitalized(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
