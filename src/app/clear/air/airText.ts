import type { LengthUnit } from "../../../setup/types/types.ts";
import type { AirState, Within } from "../../../studies/air/airState.ts";
import { withMinus } from "../../../studies/wording/withMinus.ts";
import { unitsFromMm } from "../../../units/lengthUnits.ts";
import { bareUnit, type Quantity, quantityInUnits } from "../../../units/quantity.ts";

/** A quantity in the file's own unit with its name: `64 psi`. A dash where there is none. */
export function quantityText(value: number | null, quantity: Quantity, units: LengthUnit): string {
  if (value === null) return "–";
  const number = quantityInUnits(value, quantity, units);
  return `${withMinus(number.toFixed(Math.abs(number) < 10 ? 1 : 0))} ${bareUnit(quantity, units)}`;
}

/** A rate in load a length: `310 lb/in`. @param rate N/mm */
export function rateText(rate: number | null, units: LengthUnit): string {
  if (rate === null) return "–";
  const number = quantityInUnits(rate, "load", units) / unitsFromMm(1, units);
  return `${withMinus(number.toFixed(number < 100 ? 1 : 0))} ${bareUnit("load", units)}/${units}`;
}

/** A ride frequency: `1.35 Hz`. */
export function frequencyText({ frequency }: AirState): string {
  return frequency === null ? "–" : `${frequency.toFixed(2)} Hz`;
}

/** What is wrong with a height or a pressure, in two words; "" = it is within its limits. */
export function beyondText(within: Within | null, what: "height" | "pressure"): string {
  if (within === null || within === "within") return "";
  return `${within === "below" ? "below least" : "above greatest"} ${what}`;
}
