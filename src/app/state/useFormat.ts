import type { LengthFormat } from "../../units/formatLength.ts";
import { lengthFormatOf } from "./preferences.ts";
import { useWorkbench } from "./useWorkbench.ts";

/** How lengths are written now: the units a person chose, or the file's own. */
export function useFormat(): LengthFormat {
  return useWorkbench((s) => lengthFormatOf(s.preferences.lengths, s.truck?.setup.units ?? "in"));
}
