import { amountText } from "../../studies/wording/amountText.ts";
import { gapWord } from "../../studies/wording/gapWord.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { shownGaps } from "../state/shown.ts";
import { isSamePart } from "../state/viewActions.ts";
import type { WorkbenchState } from "../state/workbenchState.ts";
import type { LinearDimension } from "./overlay/dimensions.ts";
import { worstOf } from "./worstOf.ts";

/** The gap now of the part that comes nearest of all, as a dimension; null where a mark tells it already. */
export function worstDimension(
  state: WorkbenchState,
  allowance: number,
  format: LengthFormat,
): LinearDimension | null {
  const worst = state.truck && worstOf(state.truck);
  const entry = worst && shownGaps(state).find((gap) => isSamePart(gap, worst));
  if (!entry || gapWord(entry.gap, allowance) !== "clear" || isSamePart(entry, state.selection)) return null;
  return {
    kind: "linear",
    from: entry.onRing,
    to: entry.point,
    asides: [],
    text: `${entry.part} ${amountText(entry.gap, format, true)}`,
  };
}
