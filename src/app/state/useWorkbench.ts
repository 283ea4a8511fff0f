import { useStore } from "zustand";
import type { LengthFormat } from "../../units/formatLength.ts";
import { lengthFormatOf } from "./preferences.ts";
import { workbench } from "./workbench.ts";
import type { Workbench } from "./workbenchActions.ts";

/** Follows the page's store. The selector must give a primitive or something that already existed. */
export function useWorkbench<T>(selector: (state: Workbench) => T): T {
  return useStore(workbench, selector);
}

/** How lengths are written now: the units a person chose, or the file's own. */
export function useFormat(): LengthFormat {
  return useWorkbench((s) => lengthFormatOf(s.preferences.lengths, s.truck?.setup.units ?? "in"));
}
