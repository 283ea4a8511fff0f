import { useEffect, useState } from "react";

/** How what was asked for stands. */
export type Fetched<T> =
  | { readonly is: "awaited" }
  | { readonly is: "there"; readonly value: T }
  | { readonly is: "missing"; readonly askAgain: () => void };

/**
 * What is fetched of a name, anew for each other name.
 * @param name null = nothing is asked for yet
 * @param fetch one and the same at each call; where it fails, it can be asked again
 */
export function useFetched<T>(name: string | null, fetch: (name: string) => Promise<T>): Fetched<T> {
  const [got, setGot] = useState<{ readonly name: string; readonly value: { readonly of: T } | null } | null>(
    null,
  );
  useEffect(() => {
    if (name === null || got?.name === name) return;
    let isLate = false;
    fetch(name).then(
      (value) => isLate || setGot({ name, value: { of: value } }),
      () => isLate || setGot({ name, value: null }),
    );
    return () => {
      isLate = true;
    };
  }, [name, fetch, got]);
  if (name === null || got?.name !== name) return { is: "awaited" };
  return got.value ? { is: "there", value: got.value.of } : { is: "missing", askAgain: () => setGot(null) };
}
