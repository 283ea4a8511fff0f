import { useEffect, useMemo, useRef } from "react";
import type { BufferGeometry } from "three";

/**
 * A geometry that is made when what it is made from changes, and disposed with the component. Compared by value: a truck
 * made anew because of one number has parts of its own that are all as they were.
 * @param from everything `make` reads
 */
export function useGeometry<G extends BufferGeometry>(make: () => G, from: readonly unknown[]): G {
  const held = useRef(from);
  if (!isAlike(held.current, from)) held.current = from;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller lists them
  const geometry = useMemo(make, [held.current]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}

/** Whether two are the same or hold the same numbers and texts. */
export function isAlike(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  const kind = Object.getPrototypeOf(a);
  if (kind !== Object.getPrototypeOf(b)) return false;
  if (a instanceof Float64Array || Array.isArray(a)) {
    const other = b as typeof a;
    return a.length === other.length && a.every((one: unknown, i: number) => isAlike(one, other[i]));
  }
  // What is more than plain data is itself alone.
  if (kind !== Object.prototype) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isAlike(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}
