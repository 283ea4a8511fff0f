import "./counter.css";
import "./counterNarrow.css";
import { useState } from "react";
import { barredNote, cutSentence, frontTitle } from "../../../studies/wording/pictureTexts.ts";
import { type FieldWindowAsked, useFieldWindow } from "../../parts/window/useFieldWindow.ts";
import { counter } from "../../state/counterStore.ts";
import { CounterFigure } from "./CounterFigure.tsx";
import { CounterLead } from "./CounterLead.tsx";
import { CounterWords } from "./CounterWords.tsx";
import { toldOf } from "./comparisonSentences.ts";
import { HubFaceSlider } from "./HubFaceSlider.tsx";
import { frontAround, picturesOf } from "./pictures.ts";
import { SteeringFigure } from "./SteeringFigure.tsx";
import type { Comparison } from "./useComparison.ts";
import { VariantChoices } from "./VariantChoices.tsx";

/** Pictures, plain words, and one thing to try. */
export function CounterBoard({ comparison }: { comparison: Comparison }) {
  const { stances, travel, format, slider, first, second, secondOwn, chosen } = comparison;
  // While the slider is held the pictures follow it and the words wait: nothing moves under the hand.
  const [grip, setGrip] = useState<{
    readonly comparison: Comparison;
    readonly window: FieldWindowAsked | null;
  } | null>(null);
  const was = grip?.comparison;
  const isOfThese = was?.travel === travel && chosen.every((one, i) => one === was.chosen[i]);
  const held = isOfThese ? grip : null;
  const worded = held?.comparison ?? comparison;
  const told = toldOf(worded);
  const model = (first ?? second)?.truck.model ?? null;
  const pictures = picturesOf(comparison);
  const { front } = pictures;
  const still = held ? picturesOf(held.comparison) : pictures;
  const last = useFieldWindow(secondOwn, "knuckle.hubFace");
  // What was answered of another truck tells nothing of this one.
  const asked = last && { ...last, window: last.answered.answer };
  const window = held ? held.window : asked;
  const isDoubted = told.some(({ doubts }) => doubts.length > 0);
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
          view="front"
          content={front}
          title={frontTitle(travel, model, format)}
          format={format}
          around={frontAround(still.front, slider)}
          note={`${cutSentence("front", front.cutAt, format, front.pictured.length > 1)} ${barredNote(front.pictured)}`.trimEnd()}
        />
        <SteeringFigure key={travel} comparison={comparison} pictures={pictures} />
      </div>
      <HubFaceSlider
        comparison={comparison}
        onHold={(isHeld) => setGrip(isHeld ? { comparison, window: asked } : null)}
      />
      <div className="counter-side">
        <CounterLead comparison={worded} window={window} isBehind={worded.second?.truck !== second?.truck} />
        <CounterWords comparison={worded} window={window} barred={barredNote(still.above.pictured)} />
      </div>
    </div>
  );
}
