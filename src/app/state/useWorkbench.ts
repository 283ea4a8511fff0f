import { useStore } from "zustand";
import { workbench } from "./workbench.ts";
import type { WorkbenchActions, WorkbenchState } from "./workbenchStore.ts";

/** Follows the page's store. The selector must give a primitive or something that already existed. */
export function useWorkbench<T>(selector: (state: WorkbenchState & WorkbenchActions) => T): T {
  return useStore(workbench, selector);
}
