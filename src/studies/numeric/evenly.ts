/** `count` numbers from `low` to `high`; both ends exact, and a symmetric range exactly symmetric. */
export function evenly(low: number, high: number, count: number): Float64Array {
  const last = count - 1;
  const values = new Float64Array(count);
  for (let i = 0; i < count; i++) values[i] = (low * (last - i) + high * i) / last + 0; // + 0 turns −0 into 0
  values[0] = low;
  values[last] = high;
  return values;
}

/** 0 … `count` − 1: both ends, the middle, the quarters and so on. Wherever it is left off, those done lie evenly. */
export function* coarseFirst(count: number): Generator<number> {
  let step = 1;
  while (step < count - 1) step *= 2;
  for (const end of new Set([0, count - 1])) yield end;
  for (; step > 1; step /= 2) for (let i = step / 2; i < count - 1; i += step) yield i;
}
