/** Number of the value nearest to `wanted`; values ascend, and there is at least one. */
export function nearestIndex(values: readonly number[], wanted: number): number {
  let best = 0;
  for (let i = 1; i < values.length; i++) {
    if (Math.abs(values[i]! - wanted) < Math.abs(values[best]! - wanted)) best = i;
  }
  return best;
}
