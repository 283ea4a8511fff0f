import { useStore } from "zustand";
import { workbench } from "./workbench.ts";

/** Whether there is a step to take back. */
export function useCanUndo(): boolean {
  return useStore(workbench.temporal, (history) => history.pastStates.length > 0);
}

/** Whether there is a step to take again. */
export function useCanRedo(): boolean {
  return useStore(workbench.temporal, (history) => history.futureStates.length > 0);
}
