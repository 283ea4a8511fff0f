/** Whether two JSON values are the same as typed: order of keys aside, and `5.5` is another value than `"5 1/2"`. */
export function isSameJson(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return a === b; // 0 is -0
  if (Array.isArray(a) || Array.isArray(b)) {
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((item, i) => isSameJson(item, b[i]))
    );
  }
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every(
    (key) =>
      Object.hasOwn(b, key) &&
      isSameJson((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}
