import { useEffect } from "react";
import { useStore } from "zustand";
import type { CheckReport } from "../../studies/reports/check.ts";
import type { Truck } from "../state/truck.ts";
import { checkedTrucks, wantChecks } from "./checkedTrucks.ts";

/**
 * Checks of some trucks: undefined = still being worked out, null = it could not be finished.
 * @param trucks the same list until it changes. @param isWanted false = nobody looks: nothing is asked for
 */
export function useReports(trucks: readonly Truck[], isWanted: boolean): (CheckReport | null | undefined)[] {
  useStore(checkedTrucks, (s) => s.answers);
  useEffect(() => {
    if (isWanted) wantChecks(trucks);
  }, [trucks, isWanted]);
  const { reports } = checkedTrucks.getState();
  return trucks.map((truck) => reports.get(truck));
}
