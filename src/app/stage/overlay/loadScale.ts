import type { LengthUnit } from "../../../setup/types/types.ts";
import { loadScaleText } from "../../../studies/wording/loadsWords.ts";
import { quantityInUnits } from "../../../units/quantity.ts";

/** A bar as long as the arrow of a round force. */
export interface LoadScale {
  readonly pixels: number;
  readonly text: string;
}

/** Pixels that the bar is at most long. */
const LONGEST = 130;

/**
 * The longest bar there is room for whose force is 1, 2 or 5 of a power of ten in the unit people read; null = no arrow has a
 * length. @param pixels that an arrow square to the eye is long for each newton
 */
export function loadScale(pixels: number, units: LengthUnit): LoadScale | null {
  if (!(pixels > 0 && Number.isFinite(pixels))) return null;
  const perUnit = pixels / quantityInUnits(1, "load", units);
  const most = LONGEST / perUnit;
  const power = 10 ** Math.floor(Math.log10(most));
  const force = power * (most >= 5 * power ? 5 : most >= 2 * power ? 2 : 1);
  return { pixels: force * perUnit, text: loadScaleText(force, units) };
}
