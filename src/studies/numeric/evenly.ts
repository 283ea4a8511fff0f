/** `count` numbers from `low` to `high`; both ends exact, and a symmetric range exactly symmetric. */
export function evenly(low: number, high: number, count: number): Float64Array {
  const last = count - 1;
  const values = new Float64Array(count);
  for (let i = 0; i < count; i++) values[i] = (low * (last - i) + high * i) / last + 0; // + 0 turns −0 into 0
  values[0] = low;
  values[last] = high;
  return values;
}
