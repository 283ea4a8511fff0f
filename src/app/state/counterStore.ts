import { createStore } from "zustand/vanilla";

/** What was chosen at the counter. Kept while the page is open; no part of any setup. */
export interface CounterState {
  /** A variant's name, null = the setup as it stands, undefined = not chosen yet. */
  readonly first: string | null | undefined;
  readonly second: string | null | undefined;
  /** mm; null = the first of the setup's heights. */
  readonly travel: number | null;
  /** Hub face of the second truck by the slider, mm; null = its own. */
  readonly hubFace: number | null;
}

export const counter = createStore<CounterState>()(() => ({
  first: undefined,
  second: undefined,
  travel: null,
  hubFace: null,
}));

/**
 * Which two are compared: those chosen, as long as there are such; else the setup as it stands with the variant shown,
 * or with the first there is.
 */
export function chosenPair(
  { first, second }: Pick<CounterState, "first" | "second">,
  names: readonly string[],
  shown: string | null,
): readonly [first: string | null, second: string | null] {
  const isThere = (name: string | null | undefined) => name === null || names.includes(name ?? "");
  const a = isThere(first) ? (first ?? null) : null;
  if (isThere(second)) return [a, second ?? null];
  if (a !== null) return [a, null];
  return [null, shown !== null && names.includes(shown) ? shown : (names[0] ?? null)];
}
