/**
 * How far each rim flange stands outside the bead seat, mm: half an inch, so that a wheel is an inch wider
 * over all than its rim width. Common practice, no source; real wheels differ by about ⅛ in a side.
 */
export const RIM_FLANGE_WIDTH = 12.7;

/**
 * Offset of a wheel from its backspacing (mounting face to inboard rim edge) and rim width, mm.
 * + = mounting face outboard of the wheel's center plane (ISO 3911: inset).
 */
export function offsetFromBackspacing(backspacing: number, rimWidth: number): number {
  return backspacing - (rimWidth / 2 + RIM_FLANGE_WIDTH);
}

/** Backspacing of a wheel from its offset and rim width, mm; undoes `offsetFromBackspacing`. */
export function backspacingFromOffset(offset: number, rimWidth: number): number {
  return rimWidth / 2 + RIM_FLANGE_WIDTH + offset;
}
