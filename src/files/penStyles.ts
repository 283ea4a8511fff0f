import type { Pen } from "../geometry/page.ts";

/** How a pen draws: mm wide, dashes and gaps in mm (none = unbroken), gray from 0 (black) to 1. */
export interface PenStyle {
  readonly width: number;
  readonly dashes: readonly number[];
  readonly gray: number;
}

/**
 * Wide lines for what is seen, dashed for what is hidden, long-dashed dotted for axes, narrow for all else (kinds of lines as
 * in ISO 128-2, from memory). Black alone, told apart by width and dashes: a print has no colors.
 */
export const PEN_STYLES: Readonly<Record<Pen, PenStyle>> = {
  outline: { width: 0.5, dashes: [], gray: 0 },
  hidden: { width: 0.2, dashes: [2, 1], gray: 0.35 },
  center: { width: 0.18, dashes: [8, 1.5, 0.5, 1.5], gray: 0 },
  cut: { width: 0.35, dashes: [], gray: 0 },
  mark: { width: 0.25, dashes: [4, 1.5], gray: 0 },
  hatch: { width: 0.13, dashes: [], gray: 0.3 },
  dimension: { width: 0.18, dashes: [], gray: 0 },
  frame: { width: 0.5, dashes: [], gray: 0 },
};
