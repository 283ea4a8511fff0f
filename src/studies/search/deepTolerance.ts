/** mm. Past this overlap nobody asks how deep it is to a tenth of a millimeter… */
const DEEP = 25;

/** mm. …and this is near enough. */
const DEEP_TOLERANCE = 2;

/** mm. How far a proven bound may stay below the worst gap found. @param asked that for gaps that are not deep */
export function toleranceAt(gap: number, asked: number): number {
  return gap < -DEEP ? Math.max(asked, DEEP_TOLERANCE) : asked;
}

/** mm. A pose is offered by a gap this near the true one: the answer's own is looked at again… */
export const OFFER_COARSE = 0.001;

/** mm. …and a deep one no nearer than a share of what it may be off by. */
const DEEP_COARSE = 0.1;

/** mm. How much too large a gap may be told by which a pose is offered. @param best the least found so far */
export function coarseAt(best: number): number {
  return best < -DEEP ? DEEP_COARSE : OFFER_COARSE;
}
