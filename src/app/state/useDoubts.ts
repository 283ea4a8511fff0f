import { useCallback } from "react";
import type { Doubt } from "../../studies/doubts/doubt.ts";
import { exampleDoubts } from "../../studies/wording/exampleWords.ts";
import type { Truck } from "./truck.ts";

const known = new WeakMap<Truck, readonly Doubt[]>();

/** What is in doubt of a truck, of every kind: the one place that says so, for every screen. The same list until it changes. */
export function useDoubts(): (truck: Truck) => readonly Doubt[] {
  return useCallback((truck) => {
    const doubts = known.get(truck) ?? exampleDoubts(truck.setup);
    known.set(truck, doubts);
    return doubts;
  }, []);
}
