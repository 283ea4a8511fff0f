import { useMemo } from "react";
import { useStore } from "zustand";
import { createStore } from "zustand/vanilla";
import type { NamedTruck } from "./alignmentPlots.ts";

/** Names of what is laid over the truck shown, in every plot of the page; gone with the page. */
const laid = createStore<{ readonly names: readonly string[] }>()(() => ({ names: [] }));

/** Which of the other trucks are laid over the one shown; the same list until one of them changes. */
export function useLaidOver(variants: readonly NamedTruck[]): readonly NamedTruck[] {
  const { names } = useStore(laid);
  return useMemo(() => variants.filter(({ name }) => names.includes(name)), [variants, names]);
}

/** Lays one over, or takes it off again. */
export function layOver(name: string, isLaid: boolean): void {
  laid.setState(({ names }) => ({
    names: isLaid ? [...names.filter((one) => one !== name), name] : names.filter((one) => one !== name),
  }));
}
