/** A row of numbers that counts how often it is read: what a walk over it costs, told without a clock. */
export function countedReads(row: Float64Array): {
  readonly row: Float64Array;
  readonly reads: () => number;
} {
  let count = 0;
  const counted = new Proxy(row, {
    get(target, key) {
      count++;
      const value = Reflect.get(target, key, target);
      return typeof value === "function" ? value.bind(target) : value;
    },
  });
  const reads = () => {
    const found = count;
    count = 0;
    return found;
  };
  return { row: counted, reads };
}
