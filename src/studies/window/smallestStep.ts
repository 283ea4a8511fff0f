/**
 * The smallest step found that does: doubled from the first until one does, then halved. What is found does; that nothing smaller
 * does is not proven where doing comes and goes.
 * @param first, most of the steps tried, more than 0 @returns null where none of them does
 */
export function smallestStep(
  does: (step: number) => boolean,
  first: number,
  most: number,
  tolerance: number,
  isSpent: () => boolean,
): number | null {
  let low = 0;
  let high = first;
  while (!does(high)) {
    if (high >= most || isSpent()) return null;
    [low, high] = [high, Math.min(2 * high, most)];
  }
  while (high - low > tolerance) {
    const middle = 0.5 * (low + high);
    if (does(middle)) high = middle;
    else low = middle;
  }
  return high;
}
