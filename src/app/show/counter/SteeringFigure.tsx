import { useMemo, useState } from "react";
import { aboveTitle, cutSentence, steeredTitle } from "../../../studies/wording/pictureTexts.ts";
import { CounterFigure } from "./CounterFigure.tsx";
import { type Pictures, steeredAround, steeredPicture } from "./pictures.ts";
import type { Comparison } from "./useComparison.ts";
import { useSteering } from "./useSteering.ts";

export type SteeringFigureProps = {
  comparison: Comparison;
  pictures: Pictures;
};

/** Share of lock that a press steers. */
const STEP = 0.1;

/** From above, where it matters; and both steered together inside the arch, slowly on a press or a step at a time. */
export function SteeringFigure({ comparison, pictures }: SteeringFigureProps) {
  const { travel, format, first, second } = comparison;
  const { telling, above } = pictures;
  const model = (first ?? second)?.truck.model ?? null;
  const [steer, setSteer] = useState<number | null>(null);
  const { isPlaying, canPlay, play, stop } = useSteering(setSteer);
  const around = useMemo(() => steeredAround(comparison, pictures), [comparison, pictures]);
  const content = steer === null ? above : steeredPicture(comparison, pictures, steer);
  const title =
    steer === null
      ? aboveTitle(telling, travel, model)
      : steeredTitle(steer, telling.side, travel, model, content.pictured);
  const step = (way: 1 | -1) => {
    stop();
    const from = steer ?? telling.steer;
    // On whole steps, so that straight ahead is met.
    const to = Math.round((from + way * STEP) / STEP) * STEP;
    setSteer(Math.min(1, Math.max(-1, to)));
  };
  return (
    <CounterFigure
      view="above"
      content={content}
      title={title}
      format={format}
      around={around}
      note={cutSentence("above", content.cutAt, format, content.pictured.length > 1)}
    >
      <div className="counter-steering">
        <button type="button" className="button" aria-label="Steer a step left" onClick={() => step(1)}>
          ◀ left
        </button>
        {canPlay && (
          <button type="button" className="button" onClick={isPlaying ? stop : play}>
            {isPlaying ? "Stop" : "Steer slowly"}
          </button>
        )}
        <button type="button" className="button" aria-label="Steer a step right" onClick={() => step(-1)}>
          right ▶
        </button>
        <button
          type="button"
          className="button"
          aria-label="Steer back to where it matters"
          disabled={steer === null}
          onClick={() => {
            stop();
            setSteer(null);
          }}
        >
          Back
        </button>
      </div>
    </CounterFigure>
  );
}
