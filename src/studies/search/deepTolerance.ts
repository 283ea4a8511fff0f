/** mm. Past this overlap nobody asks how deep it is to a tenth of a millimeter… */
const DEEP = 25;

/** mm. …and this is near enough. */
const DEEP_TOLERANCE = 2;

/** mm. How far a proven bound may stay below the worst gap found. @param asked that for gaps that are not deep */
export function toleranceAt(gap: number, asked: number): number {
  return gap < -DEEP ? Math.max(asked, DEEP_TOLERANCE) : asked;
}
