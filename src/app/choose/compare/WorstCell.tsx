import { answerState } from "../../../studies/doubts/doubt.ts";
import { amountText } from "../../../studies/wording/amountText.ts";
import { answerWord } from "../../../studies/wording/answerWords.ts";
import { partWords } from "../../../studies/wording/nearestSurface.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { useDoubts } from "../../state/useDoubts.ts";
import type { Answered } from "../../work/answerCache.ts";

export type WorstCellProps = {
  check: Answered<"check">;
  format: LengthFormat;
};

/** What a truck comes nearest to over the whole range: a mark, a word, how much, what. */
export function WorstCell({ check, format }: WorstCellProps) {
  const doubtsOf = useDoubts();
  if (check.answer === null)
    return check.failure === null ? <span aria-busy="true">checking…</span> : <>could not be checked</>;
  const { truck } = check.wish;
  const { worst } = check.answer;
  if (worst === null) return <>nothing is measured</>;
  const state = answerState(check.answer, doubtsOf(truck));
  return (
    <span className={`worst-cell worst-${state}`}>
      <StateMark word={state} />{" "}
      <b>
        {answerWord(state)}
        {worst.gap < 0 ? " by" : state === "unfinished" ? ", so far" : ""}{" "}
        {amountText(worst.gap, format, true)}
      </b>
      <small> {partWords(truck.model, worst.side, worst.part)}</small>
    </span>
  );
}
