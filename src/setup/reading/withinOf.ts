import { parseAngle, radFromDeg } from "../../units/angle.ts";
import { parseLength } from "../../units/parseLength.ts";
import { parseNumber } from "../../units/parseNumber.ts";
import { parseQuantity, type Quantity } from "../../units/quantity.ts";
import { unitAtEnd, withUnit } from "../../units/withinText.ts";
import type { LengthUnit } from "../types/types.ts";
import type { NumberWithin } from "../types/withinTypes.ts";
import { MAX_LENGTH, MAX_QUANTITY } from "./limits.ts";
import type { TypedPair } from "./typedPair.ts";

/** What sort of number a field holds. */
export type NumberNature =
  | { readonly kind: "length" | "angle" | "number" }
  | { readonly kind: "quantity"; readonly quantity: Quantity };

/** What an uncertainty comes to, or what is wrong with it (one sentence without a full stop). */
type ReadWithin =
  | { readonly ok: true; readonly kind: NumberWithin["kind"]; readonly within: number }
  | { readonly ok: false; readonly mend: string };

/** A standard deviation of half a turn tells nothing. */
const MOST_ANGLE = radFromDeg(180);

/**
 * Reads the uncertainty of a number: mm, radians, the unit used inside of a quantity, or plain; one standard deviation, 0 or
 * more. Refuses one that could be meant in two units.
 * @param units of bare lengths and quantities
 * @param isOneText both were typed in one text
 */
export function withinOf(
  { value, within }: TypedPair,
  nature: NumberNature,
  units: LengthUnit,
  isOneText: boolean,
): ReadWithin {
  const refuse = (mend: string): ReadWithin => ({ ok: false, mend });
  const read = amountOf(within, nature, units);
  if (!read.ok) return refuse(`after the ±: ${read.mend}`);
  if (read.amount < 0) return refuse("after the ±: must be 0 or more");
  if (read.amount > mostOf(nature))
    return refuse("after the ±: is more than anything on a truck is off by; check the number and its unit");
  // Of two keys each is read by itself; of one text the unit at its end could be meant for all of it.
  const isUnclear = isOneText && isTwoWays(value, within, nature, units);
  if (isUnclear || isTwoWays(within, value, nature, units))
    return refuse("has its unit on one side of the ± only, and not the file's; write it on both");
  return { ok: true, kind: nature.kind === "quantity" ? nature.quantity : nature.kind, within: read.amount };
}

/** Whether a bare number would be another one in the unit of what stands beside it. */
function isTwoWays(
  bare: number | string,
  beside: number | string,
  nature: NumberNature,
  units: LengthUnit,
): boolean {
  const unit = typeof beside === "string" ? unitAtEnd(beside) : "";
  if (unit === "" || (typeof bare === "string" && unitAtEnd(bare) !== "")) return false;
  const alone = amountOf(bare, nature, units);
  const inUnit = amountOf(withUnit(String(bare), unit), nature, units);
  return alone.ok && inUnit.ok && Math.abs(alone.amount - inUnit.amount) > 1e-9 * Math.abs(alone.amount);
}

type Amount = { readonly ok: true; readonly amount: number } | { readonly ok: false; readonly mend: string };

function amountOf(typed: number | string, nature: NumberNature, units: LengthUnit): Amount {
  switch (nature.kind) {
    case "length": {
      const length = parseLength(typed, units);
      return length.ok ? { ok: true, amount: length.mm } : length;
    }
    case "angle": {
      const angle = parseAngle(typed);
      return angle.ok ? { ok: true, amount: angle.rad } : angle;
    }
    case "quantity": {
      const quantity = parseQuantity(typed, nature.quantity, units);
      return quantity.ok ? { ok: true, amount: quantity.value } : quantity;
    }
    case "number": {
      const number = typeof typed === "number" ? { ok: true as const, value: typed } : parseNumber(typed);
      if (!number.ok) return number;
      return Number.isFinite(number.value)
        ? { ok: true, amount: number.value }
        : { ok: false, mend: "must be a finite number" };
    }
  }
}

function mostOf(nature: NumberNature): number {
  switch (nature.kind) {
    case "length":
      return MAX_LENGTH;
    case "angle":
      return MOST_ANGLE;
    case "quantity":
      return MAX_QUANTITY[nature.quantity];
    case "number":
      return Number.MAX_VALUE;
  }
}
