/** Shims on the shelf, in thinnest ones: each twice the one before, as 1/32, 1/16 and 1/8 in are (common practice, no source). */
const SIZES = [4, 2, 1] as const;

/** Shims that make a stack, thickest first, mm: whole ones of four, two and one steps, and what is left over last. */
export function shimPieces(stack: number, step: number): number[] {
  let left = stack;
  const pieces: number[] = [];
  for (const size of SIZES) {
    const piece = size * step;
    const count = Math.floor(left / piece + 1e-6);
    for (let i = 0; i < count; i++) pieces.push(piece);
    left -= count * piece;
  }
  // A stack as measured need not be whole steps.
  return left > 1e-6 * step ? [...pieces, left] : pieces;
}
