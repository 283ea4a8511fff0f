import "./variantChoices.css";
import { answerState } from "../../studies/doubts/doubt.ts";
import { answerWord } from "../../studies/wording/answerWords.ts";
import { StateMark } from "../panels/StateMark.tsx";
import type { Contender } from "./useComparison.ts";

export type VerdictTagProps = {
  contender: Contender;
};

/** One truck's answer over the whole range, as a mark and a word. */
export function VerdictTag({ contender }: VerdictTagProps) {
  const { letter, name, answer, doubts } = contender;
  const state = answer.report && answerState(answer.report.verdict, doubts);
  return (
    <p className="counter-tag" data-verdict={state ?? "checking"}>
      <span className={`counter-letter counter-letter-${letter}`}>{letter}</span>
      <span className="counter-tag-name">{name}</span>
      <strong>
        {state && <StateMark word={state} />}{" "}
        {state ? answerWord(state) : answer.failure ? "not checked" : "checking…"}
      </strong>
    </p>
  );
}
