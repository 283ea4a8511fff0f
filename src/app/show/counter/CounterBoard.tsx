import "./counter.css";
import { aboveTitle, frontTitle, gapNote } from "../../../studies/wording/pictureTexts.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import { DoubtNotes } from "../../parts/DoubtNotes.tsx";
import { OddsLine } from "../../parts/odds/OddsLine.tsx";
import { keepTogether } from "../../words/keepTogether.ts";
import { CounterFigure } from "./CounterFigure.tsx";
import { comparisonSentences, toldOf } from "./comparisonSentences.ts";
import { counter } from "./counterStore.ts";
import { HubFaceSlider } from "./HubFaceSlider.tsx";
import { picturesOf } from "./pictures.ts";
import type { Comparison, Contender } from "./useComparison.ts";
import { VariantChoices } from "./VariantChoices.tsx";
import { VerdictTag } from "./VerdictTag.tsx";

/** Pictures, plain words, and one thing to try. */
export function CounterBoard({ comparison }: { comparison: Comparison }) {
  const { stances, travel, format, trouble, slider, first, second } = comparison;
  const model = (first ?? second)?.truck.model ?? null;
  const { front, above, telling } = picturesOf(comparison);
  const sentences = comparisonSentences(comparison);
  const told = toldOf(comparison);
  const at = stances.findIndex((stance) => stance.travel === travel);
  const failure = told.find(({ answer }) => answer.failure !== null)?.answer.failure;
  const isDoubted = told.some(({ doubts }) => doubts.length > 0);
  const isAlike = isDoubted && told.length === 2 && doubtText(told[0]!) === doubtText(told[1]!);
  const slack = slider ? 12.7 : 0;
  return (
    <div className="counter-board" data-doubted={isDoubted ? "" : undefined}>
      <div className="counter-bar">
        <VariantChoices comparison={comparison} />
        <fieldset className="counter-stances">
          <legend className="sr-only">Height</legend>
          {stances.map((stance) => (
            <button
              key={stance.name}
              type="button"
              className="button"
              aria-pressed={stance.travel === travel}
              onClick={() => counter.setState({ travel: stance.travel })}
            >
              {stance.name}
            </button>
          ))}
        </fieldset>
      </div>
      <div className="counter-pictures">
        <CounterFigure
          {...{ view: "front", content: front, title: frontTitle(travel, model, format), format, slack }}
          note={`A solid, B dashed; below, their hub faces. ${gapNote(front.pictured)}`}
        />
        <CounterFigure
          {...{ view: "above", content: above, title: aboveTitle(telling, travel, model), format, slack }}
          note={`The front of the truck is at the foot. ${gapNote(above.pictured)}`}
        />
      </div>
      <HubFaceSlider comparison={comparison} />
      <section className="counter-words" aria-labelledby="counter-words-title">
        <h3 id="counter-words-title" className="sr-only">
          In words
        </h3>
        <div className="counter-tags">
          {told.map((contender) => (
            <div key={contender.letter} className="counter-told">
              <VerdictTag {...{ contender, at, travel, format }} />
              {!isAlike && <DoubtNotes doubts={contender.doubts} />}
            </div>
          ))}
          {isAlike && (
            <div className="counter-both">
              <p>A and B alike:</p>
              <DoubtNotes doubts={told[0]!.doubts} />
            </div>
          )}
        </div>
        <div className="counter-sentences" role="status">
          {trouble.map((text) => (
            <p key={text}>This cannot be put together: {text}.</p>
          ))}
          {sentences.out && <p>{keepTogether(sentences.out)}</p>}
          <p>{keepTogether(sentences.steer ?? "Looking how far it steers…")}</p>
          <p>{keepTogether(sentences.range ?? "Checking every height and steering angle…")}</p>
          {told.map(({ letter, truck }) =>
            // A hub face that is only tried stands in no file, so nothing tells how well it is known.
            letter === "B" && comparison.isWhatIf ? null : (
              <OddsLine key={letter} truck={truck} letter={letter} />
            ),
          )}
          <CutShort study="nearest" of={told.map(({ check }) => check)} />
          <CutShort study="ways" of={told.map(({ heights }) => heights)} />
          {failure && <p>The check could not be finished: {failure}</p>}
        </div>
        <p className="counter-caution">
          As good as the measurements in the setup. A check that clears does not say that a part or a truck is
          safe.
        </p>
      </section>
    </div>
  );
}

/** What is in doubt of one of the two, to tell whether it is the same of the other. */
function doubtText({ doubts }: Contender): string {
  return doubts.map(({ kind, text }) => `${kind} ${text}`).join("\n");
}
