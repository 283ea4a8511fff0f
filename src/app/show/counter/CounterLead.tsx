import "./variantChoices.css";
import { conditionLines } from "../../../studies/wording/answerWords.ts";
import { cardComesTo, cardPlace } from "../../../studies/wording/cardPlace.ts";
import { cardFacts, cardText } from "../../../studies/wording/counterFacts.ts";
import { SAME_TRUCK, whyWords } from "../../../studies/wording/whyWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { DoubtNotes } from "../../parts/DoubtNotes.tsx";
import { StateMark } from "../../parts/StateMark.tsx";
import type { FieldWindowAsked } from "../../parts/window/useFieldWindow.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { alikeDoubts, toldOf } from "./comparisonSentences.ts";
import type { Comparison, Contender } from "./useComparison.ts";

export type CounterLeadProps = {
  comparison: Comparison;
  /** Of the second truck's hub face; null = there is none to ask of. */
  window: FieldWindowAsked | null;
  /** The second truck has another hub face already: its slider is held, and what is told is of before. */
  isBehind: boolean;
};

/** Over an answer that is no longer of what the pictures show. */
const LET_GO = "Let go of the slider to see what it comes to.";

/** The two answers, and why they differ. */
export function CounterLead({ comparison, window, isBehind }: CounterLeadProps) {
  const { stances, travel, format, isSame } = comparison;
  const told = toldOf(comparison);
  const at = stances.findIndex((stance) => stance.travel === travel);
  const isDoubted = told.some(({ doubts }) => doubts.length > 0);
  const alike = alikeDoubts(told);
  const trucks = told.map(({ letter, truck }) => ({ letter, model: truck.model }));
  const words = window && whyWords(trucks, { ...window, isLooking: isLooking(window) }, window.speech);
  return (
    <div className="counter-lead">
      <div className="counter-tags">
        {told.map((contender) => (
          <div key={contender.letter} className="counter-told" data-letter={contender.letter}>
            <VerdictTag
              contender={contender}
              at={at}
              travel={travel}
              format={format}
              isBehind={isBehind && contender.letter === "B"}
            />
            {alike === null && <DoubtNotes doubts={contender.doubts} />}
          </div>
        ))}
      </div>
      <div className="counter-why">
        {isSame && <p className="counter-same">{SAME_TRUCK}</p>}
        {words && <p>{keepTogether(words.why)}</p>}
        {words?.downsides.map((line) => (
          <p key={line} className="counter-downside">
            {keepTogether(line)}
          </p>
        ))}
      </div>
      {isDoubted && (
        <div className="counter-both">
          {alike && <p>A and B alike:</p>}
          {alike && <DoubtNotes doubts={alike} />}
          {conditionLines(told).map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
    </div>
  );
}

/** Whether more may come by itself: a search is under way, or has not begun. */
function isLooking({ answered: { answer, failure, underWay } }: FieldWindowAsked): boolean {
  return underWay !== null || (answer === null && failure === null);
}

type VerdictTagProps = {
  contender: Contender;
  /** Place of the height shown among those asked for, and the height, mm. */
  at: number;
  travel: number;
  format: LengthFormat;
  isBehind: boolean;
};

/**
 * One truck's answer over the whole range, as a mark and a word, with where it is met or what it comes to; or that it cannot
 * come to the height shown.
 */
function VerdictTag({ contender, at, travel, format, isBehind }: VerdictTagProps) {
  const { letter, name, truck, answer, doubts } = contender;
  const facts = cardFacts(answer, at, doubts);
  const place =
    cardComesTo(facts, answer.report, truck.model, format) ||
    cardPlace(answer.report, travel, answer.steering?.[at] ?? null, truck.model, format);
  return (
    <div
      className="counter-tag"
      data-verdict={isBehind ? undefined : (facts.mark ?? facts.state)}
      data-behind={isBehind ? LET_GO : undefined}
    >
      <span className={`counter-letter counter-letter-${letter}`}>{letter}</span>
      <span className="counter-tag-name">{keepTogether(name)}</span>
      <strong>
        {facts.mark && <StateMark word={facts.mark} />} {cardText(facts, travel, truck.model, format)}
      </strong>
      {place !== "" && <p className="counter-tag-place">{keepTogether(place)}</p>}
    </div>
  );
}
