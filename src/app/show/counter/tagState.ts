import { type ToldVerdict, toldVerdict } from "../../../studies/doubts/doubt.ts";
import type { TruckAnswer } from "./truckAnswer.ts";

/** What a truck's card says: its verdict over the whole range; `barred` = it cannot come to the height shown. */
export type TagState = ToldVerdict | "checking" | "failed" | "barred";

/**
 * The state of a card. A truck that rubs says that first; of one that clears elsewhere nothing green is told at a
 * height it cannot come to. @param at place of the height shown among those asked for
 */
export function tagState({ report, heights, failure }: TruckAnswer, at: number): TagState {
  if (report?.verdict === "rubs") return "rubs";
  if ((heights?.[at] ?? null) !== null) return "barred";
  if (report !== null) return toldVerdict(report);
  return failure === null ? "checking" : "failed";
}
