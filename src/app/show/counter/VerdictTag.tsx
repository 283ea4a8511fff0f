import "./variantChoices.css";
import { cardPlace } from "../../../studies/wording/cardPlace.ts";
import { cardFacts, cardText } from "../../../studies/wording/counterFacts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { keepTogether } from "../../words/keepTogether.ts";
import type { Contender } from "./useComparison.ts";

export type VerdictTagProps = {
  contender: Contender;
  /** Place of the height shown among those asked for, and the height, mm. */
  at: number;
  travel: number;
  format: LengthFormat;
};

/**
 * One truck's answer over the whole range, as a mark and a word, with where it is met; or that it cannot come to the height
 * shown.
 */
export function VerdictTag({ contender, at, travel, format }: VerdictTagProps) {
  const { letter, name, truck, answer, doubts } = contender;
  const facts = cardFacts(answer, at, doubts);
  const place = cardPlace(answer.report, travel, answer.steering?.[at] ?? null, truck.model, format);
  return (
    <div className="counter-tag" data-verdict={facts.mark ?? facts.state}>
      <span className={`counter-letter counter-letter-${letter}`}>{letter}</span>
      <span className="counter-tag-name">{name}</span>
      <strong>
        {facts.mark && <StateMark word={facts.mark} />} {cardText(facts, travel, truck.model, format)}
      </strong>
      {place !== "" && <p className="counter-tag-place">{keepTogether(place)}</p>}
    </div>
  );
}
