import { GAP } from "../../gaps/partGap.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";

/** What rides together and stands nearest on one side: its place in `model.pairs` and its gap, mm; −1 and +Infinity without any. */
export function leastTogether(model: Model, side: Side): { readonly pair: number; readonly gap: number } {
  let pair = -1;
  let gap = Number.POSITIVE_INFINITY;
  for (const [i, each] of model.pairs.entries()) {
    if (each.side !== side || each.kind !== "together" || !(each.row[GAP.gap]! < gap)) continue;
    pair = i;
    gap = each.row[GAP.gap]!;
  }
  return { pair, gap };
}
