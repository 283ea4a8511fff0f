import { useEffect } from "react";
import type { Truck } from "./truck.ts";
import { useDoubts } from "./useDoubts.ts";

/** Marks the page's root with `data-doubted` while something of the truck shown is in doubt: nothing is then drawn green. */
export function useDoubtedRoot(truck: Truck | null): void {
  const doubtsOf = useDoubts();
  const isDoubted = truck !== null && doubtsOf(truck).length > 0;
  useEffect(() => {
    document.documentElement.toggleAttribute("data-doubted", isDoubted);
  }, [isDoubted]);
}
