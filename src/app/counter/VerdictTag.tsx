import "./variantChoices.css";
import { StateMark } from "../panels/StateMark.tsx";
import type { Contender } from "./useComparison.ts";

export type VerdictTagProps = {
  contender: Contender;
};

const WORDS = { rubs: "rubs", close: "close", clear: "clears" } as const;

/** One truck's answer over the whole range, as a mark and a word. */
export function VerdictTag({ contender }: VerdictTagProps) {
  const { letter, name, answer } = contender;
  const verdict = answer.report?.verdict;
  return (
    <p className="counter-tag" data-verdict={verdict ?? "checking"}>
      <span className={`counter-letter counter-letter-${letter}`}>{letter}</span>
      <span className="counter-tag-name">{name}</span>
      <strong>
        {verdict && <StateMark word={verdict} />}{" "}
        {verdict ? WORDS[verdict] : answer.failure ? "not checked" : "checking…"}
      </strong>
    </p>
  );
}
