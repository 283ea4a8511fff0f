import { useCallback } from "react";
import type { Doubt } from "../../studies/doubts/doubt.ts";
import { doubtsOf } from "./doubtsOf.ts";
import type { Truck } from "./truck.ts";
import { useFormat } from "./useFormat.ts";

/** What is in doubt of any truck, in the units shown. */
export function useDoubts(): (truck: Truck) => readonly Doubt[] {
  const format = useFormat();
  return useCallback((truck) => doubtsOf(truck, format), [format]);
}
