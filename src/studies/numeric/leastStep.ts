/**
 * The change of the unknowns that takes `left` (what is left over of each thing) to nothing, by its slopes: of all that
 * do, the shortest; where none does, the one that leaves the least squares. At most two things and two unknowns.
 * @param slopes a row a thing, a column an unknown. @returns null when the slopes cannot tell the unknowns apart.
 */
export function leastStep(slopes: readonly (readonly number[])[], left: readonly number[]): number[] | null {
  const things = slopes.length;
  const unknowns = slopes[0]?.length ?? 0;
  if (things <= unknowns) {
    // Jᵀ (J Jᵀ)⁻¹ r
    const square = slopes.map((a) => slopes.map((b) => sumOf(a.map((value, i) => value * b[i]!))));
    const shares = solved(square, left);
    return (
      shares &&
      Array.from({ length: unknowns }, (_, i) => -sumOf(shares.map((share, row) => share * slopes[row]![i]!)))
    );
  }
  // (Jᵀ J)⁻¹ Jᵀ r
  const columns = Array.from({ length: unknowns }, (_, i) => slopes.map((row) => row[i]!));
  const square = columns.map((a) => columns.map((b) => sumOf(a.map((value, i) => value * b[i]!))));
  const right = columns.map((column) => -sumOf(column.map((value, i) => value * left[i]!)));
  return solved(square, right);
}

/** Share of the diagonal's product below which a determinant is nothing but rounding. */
const SINGULAR = 1e-12;

/** Solves a 1 × 1 or 2 × 2 system. */
function solved(square: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const [[a = 0, b = 0] = [], [c = 0, d = 0] = []] = square;
  if (square.length === 1) return a > 0 ? [right[0]! / a] : null;
  const determinant = a * d - b * c;
  if (!(Math.abs(determinant) > SINGULAR * Math.abs(a * d))) return null;
  return [(right[0]! * d - b * right[1]!) / determinant, (a * right[1]! - right[0]! * c) / determinant];
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
