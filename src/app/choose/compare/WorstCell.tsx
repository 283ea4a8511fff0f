import { answerState } from "../../../studies/doubts/doubt.ts";
import type { CheckReport } from "../../../studies/reports/check.ts";
import { amountText } from "../../../studies/wording/amountText.ts";
import { answerWord } from "../../../studies/wording/answerWords.ts";
import { partWords } from "../../../studies/wording/nearestSurface.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import type { Truck } from "../../state/truck.ts";
import { useDoubts } from "../../state/useDoubts.ts";

export type WorstCellProps = {
  truck: Truck;
  /** undefined = being worked out, null = could not be finished. */
  report: CheckReport | null | undefined;
  format: LengthFormat;
};

/** What a truck comes nearest to over the whole range: a mark, a word, how much, what. */
export function WorstCell({ truck, report, format }: WorstCellProps) {
  const doubtsOf = useDoubts();
  if (report === undefined) return <span aria-busy="true">checking…</span>;
  if (report === null) return <>could not be checked</>;
  const { worst, verdict } = report;
  if (worst === null) return <>nothing is measured</>;
  const state = answerState(verdict, doubtsOf(truck));
  return (
    <span className={`worst-cell worst-${state}`}>
      <StateMark word={state} />{" "}
      <b>
        {answerWord(state)} {worst.gap < 0 ? "by" : ""} {amountText(worst.gap, format, true)}
      </b>
      <small> {partWords(truck.model, worst.side, worst.part)}</small>
    </span>
  );
}
