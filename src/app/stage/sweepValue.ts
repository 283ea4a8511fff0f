/**
 * A value that goes from where it is to `high`, back to `low`, and so on, evenly.
 * @param start within low … high; @param ways how many whole ways it has gone since
 */
export function sweepValue(low: number, high: number, start: number, ways: number): number {
  if (!(high > low)) return low;
  const phase = ((start - low) / (high - low) + ways) % 2;
  return low + (high - low) * (phase <= 1 ? phase : 2 - phase);
}
