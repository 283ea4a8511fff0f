/**
 * Remembers the last answer of a pure function by the identity of its arguments: asked again with the very
 * same ones it gives back the very same object, so that nothing downstream sees a change. One slot, no growth.
 */
export function memoLast<A extends readonly unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  let last: { readonly args: A; readonly result: R } | undefined;
  return (...args) => {
    const known = last;
    if (known && args.every((arg, i) => Object.is(arg, known.args[i]))) return known.result;
    const result = compute(...args);
    last = { args, result };
    return result;
  };
}
