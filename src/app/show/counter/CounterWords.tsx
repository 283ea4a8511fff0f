import { CutShort } from "../../parts/CutShort.tsx";
import { OddsLine } from "../../parts/odds/OddsLine.tsx";
import { useHeldHeight } from "../../parts/useSize.ts";
import { WindowAnswer } from "../../parts/window/FieldWindowView.tsx";
import type { FieldWindowAsked } from "../../parts/window/useFieldWindow.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { comparisonSentences, toldOf } from "./comparisonSentences.ts";
import type { Comparison } from "./useComparison.ts";

export type CounterWordsProps = {
  comparison: Comparison;
  window: FieldWindowAsked | null;
  /** What cannot come to the pose of the second picture; "" = nothing. */
  barred: string;
};

/** All that is said of the two, sentence by sentence, and how far the hub face may go. */
export function CounterWords({ comparison, window, barred }: CounterWordsProps) {
  const { trouble, second, isWhatIf } = comparison;
  const told = toldOf(comparison);
  const sentences = comparisonSentences(comparison);
  const isBetween = sentences.steer === null || sentences.range === null;
  const tall = useHeldHeight<HTMLDivElement>(isBetween);
  const failure = told.find(({ answer }) => answer.failure !== null)?.answer.failure;
  const tried = second?.truck.setup.knuckle.hubFace;
  return (
    <section className="counter-words" aria-labelledby="counter-words-title">
      <h3 id="counter-words-title" className="sr-only">
        In words
      </h3>
      <div ref={tall} className="counter-sentences" role="status">
        {trouble.map((text) => (
          <p key={text}>This does not go together: {text}.</p>
        ))}
        {sentences.out && <p>{keepTogether(sentences.out)}</p>}
        <p>{keepTogether(sentences.steer ?? "Looking how far it steers…")}</p>
        {barred !== "" && <p>{barred}</p>}
        <p>{keepTogether(sentences.range ?? "Checking every height and steering angle…")}</p>
        {told.map(({ letter, truck }) =>
          // A hub face that is only tried stands in no file, so nothing tells how well it is known.
          letter === "B" && isWhatIf ? null : <OddsLine key={letter} truck={truck} letter={letter} />,
        )}
        <CutShort study="nearest" of={told.map(({ check }) => check)} />
        <CutShort study="ways" of={told.map(({ heights }) => heights)} />
        {failure && <p>The check could not be finished: {failure}</p>}
      </div>
      {window && (
        <div className="counter-window">
          <WindowAnswer asked={window} ticks={[]} {...(tried === undefined ? {} : { value: tried })} />
        </div>
      )}
      <p className="counter-caution">
        As good as the measurements in the setup. A check that clears does not say that a part or a truck is
        safe.
      </p>
    </section>
  );
}
