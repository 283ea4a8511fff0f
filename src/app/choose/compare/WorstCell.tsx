import { worstFacts, worstFactsText } from "../../../studies/wording/gapTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { useDoubts } from "../../state/useDoubts.ts";
import { keepTogether } from "../../words/keyWords.ts";
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
  const facts = worstFacts(check.answer, truck.model, doubtsOf(truck));
  const { state, told } = facts;
  const text = worstFactsText(facts, truck.setup, format);
  if (told === null) return <>{text}</>;
  return (
    <span className={`worst-cell worst-${state}`}>
      <StateMark word={state} /> <b>{keepTogether(text)}</b>
      <small> {told.part}</small>
    </span>
  );
}
