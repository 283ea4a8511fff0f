/** 0 … `count` − 1: both ends, the middle, the quarters and so on. Wherever it is left off, those done lie evenly. */
export function* coarseFirst(count: number): Generator<number> {
  let step = 1;
  while (step < count - 1) step *= 2;
  for (const end of new Set([0, count - 1])) yield end;
  for (; step > 1; step /= 2) for (let i = step / 2; i < count - 1; i += step) yield i;
}
