import { useEffect, useMemo } from "react";
import type { BufferGeometry } from "three";

/**
 * A geometry that is made when what it is made from changes, and disposed with the component.
 * @param from everything `make` reads
 */
export function useGeometry<G extends BufferGeometry>(make: () => G, from: readonly unknown[]): G {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller lists them
  const geometry = useMemo(make, from);
  useEffect(() => () => geometry.dispose(), [geometry]);
  return geometry;
}
