import { useStore } from "zustand";
import type { Workbench } from "./actionContext.ts";
import { workbench } from "./workbench.ts";

/** Follows the page's store. The selector must give a primitive or something that already existed. */
export function useWorkbench<T>(selector: (state: Workbench) => T): T {
  return useStore(workbench, selector);
}
