import type { LengthUnit } from "../../setup/types/types.ts";
import { degFromRad } from "../../units/angle.ts";
import { unitsFromMm } from "../../units/lengthUnits.ts";
import type { OddsInput } from "../odds/oddsInputs.ts";
import type { OddsReport } from "../odds/oddsOf.ts";

/**
 * Odds as `odds --json` prints them: lengths in the file's units, angles in degrees; shares 0 … 1. `open` draws are counted as
 * touching in `clears` and `low`, as clear in `high`; `apart` ones as touching.
 */
export function oddsJson(report: OddsReport, units: LengthUnit) {
  const { clears, low, high, confidence, draws, seed, gap, open, apart, matters, inputs, leftOut } = report;
  return {
    units,
    clears,
    low,
    high,
    confidence,
    draws,
    seed,
    ...(report.cutShort ? { cutShort: true } : {}),
    gap: unitsFromMm(gap, units),
    open,
    apart,
    matters,
    inputs: inputs.map((input) => ({ field: input.key, within: withinOf(input, units), from: input.source })),
    leftOut,
  };
}

function withinOf({ kind, within }: OddsInput, units: LengthUnit): number {
  return kind === "angle" ? degFromRad(within) : unitsFromMm(within, units);
}
