import "./variantChoices.css";
import { type AnswerState, answerState } from "../../../studies/doubts/doubt.ts";
import { answerWord } from "../../../studies/wording/answerWords.ts";
import { nameOfHeight } from "../../../studies/wording/poseWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { type TagState, tagState } from "./tagState.ts";
import type { Contender } from "./useComparison.ts";

export type VerdictTagProps = {
  contender: Contender;
  /** Place of the height shown among those asked for, and the height, mm. */
  at: number;
  travel: number;
  format: LengthFormat;
};

/** One truck's answer over the whole range, as a mark and a word; or that it cannot come to the height shown. */
export function VerdictTag({ contender, at, travel, format }: VerdictTagProps) {
  const { letter, name, truck, answer } = contender;
  const state = tagState(answer, at);
  const shown = toShow(state, contender);
  const height = nameOfHeight(travel, truck.model, format);
  return (
    <p className="counter-tag" data-verdict={shown ?? state}>
      <span className={`counter-letter counter-letter-${letter}`}>{letter}</span>
      <span className="counter-tag-name">{name}</span>
      <strong>
        {shown && <StateMark word={shown} />} {tagText(state, shown, height)}
      </strong>
    </p>
  );
}

/** What the card is marked with; null = nothing is known yet. A height that cannot be reached is amber. */
function toShow(state: TagState, { answer, doubts }: Contender): AnswerState | null {
  switch (state) {
    case "checking":
    case "failed":
      return null;
    case "barred":
      return "close";
    case "rubs":
    case "close":
    case "clear":
    case "unfinished":
      return answer.report && answerState(answer.report, doubts);
  }
}

function tagText(state: TagState, shown: AnswerState | null, height: string): string {
  switch (state) {
    case "checking":
      return "checking…";
    case "failed":
      return "not checked";
    case "barred":
      return `can't come to ${height}`;
    case "rubs":
    case "close":
    case "clear":
    case "unfinished":
      return answerWord(shown ?? state);
  }
}
