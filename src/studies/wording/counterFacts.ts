import type { LengthFormat } from "../../units/formatLength.ts";
import { type AnswerState, answerState, type Doubt, type ToldVerdict, toldVerdict } from "../doubts/doubt.ts";
import type { HeightStop } from "../limits/heightWay.ts";
import type { NoLimits, SteerLimits } from "../map/steerLimits.ts";
import type { Model } from "../model/model.ts";
import type { CheckReport } from "../reports/check.ts";
import { answerWord } from "./answerWords.ts";
import { nameOfHeight } from "./poseWords.ts";

/** What is known so far of one truck that is compared. */
export interface TruckAnswer {
  /** At each height asked for; null = not known yet. */
  readonly steering: readonly (SteerLimits | NoLimits)[] | null;
  /** What keeps the truck from each height asked for, null = it stands there; null = not known yet. */
  readonly heights: readonly (HeightStop | null)[] | null;
  /** Over the whole range; null = not known yet. */
  readonly report: CheckReport | null;
  /** Why there will be no more; null = all is well. */
  readonly failure: string | null;
}

/** What a truck's card says, before it is words. */
export interface CardFacts {
  /** Its verdict over the whole range; `barred` = it cannot come to the height shown. */
  readonly state: ToldVerdict | "checking" | "failed" | "barred";
  /** What the card is marked with; null = nothing is known yet. */
  readonly mark: AnswerState | null;
}

/**
 * The card of a truck. One that rubs says that first; of one that clears elsewhere nothing green is told at a height it
 * cannot come to. @param at place of the height shown among those asked for @param doubts what keeps it from being green
 */
export function cardFacts(answer: TruckAnswer, at: number, doubts: readonly Doubt[]): CardFacts {
  const { report, heights, failure } = answer;
  if (report?.verdict === "rubs") return { state: "rubs", mark: "rubs" };
  if ((heights?.[at] ?? null) !== null) return { state: "barred", mark: "close" };
  if (report !== null) return { state: toldVerdict(report), mark: answerState(report, doubts) };
  return { state: failure === null ? "checking" : "failed", mark: null };
}

/** The card's few words. @param travel the height shown, mm */
export function cardText(
  { state, mark }: CardFacts,
  travel: number,
  model: Model,
  format: LengthFormat,
): string {
  switch (state) {
    case "checking":
      return "checking…";
    case "failed":
      return "not checked";
    case "barred":
      return `cannot come to ${nameOfHeight(travel, model, format)}`;
    case "rubs":
    case "close":
    case "clear":
    case "unfinished":
      return answerWord(mark ?? state, model.setup);
  }
}
