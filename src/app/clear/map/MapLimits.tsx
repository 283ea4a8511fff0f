import type { ReactNode } from "react";
import type { LowestTravels } from "../../../studies/map/lowestTravels.ts";
import type { Model } from "../../../studies/model/model.ts";
import { lowStop, steerStop } from "../../../studies/wording/stopFacts.ts";
import { lowWayText, steerPanelText } from "../../../studies/wording/stopTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { useAnswer } from "../../work/useAnswer.ts";

export type MapLimitsProps = {
  truck: Truck;
};

/** No pose to start from. */
export const UNREACHED = "the linkage cannot go there";

/** The two answers people ask of a map, at the pose shown: how far it steers at this height, how low at this steer. */
export function MapLimits({ truck }: MapLimitsProps) {
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const limits = useAnswer("poseLimits", truck, { question: { travel, steer } });
  const format = useFormat();
  // What is shown may be of the pose before, until the new one's is worked out.
  const isCurrent = limits?.question?.travel === travel && limits.question.steer === steer;
  const { model } = truck;
  const { steering, lowering } = limits?.answer ?? {};
  const steers = (turn: "leftTurn" | "rightTurn") => {
    if (!steering?.ok) return UNREACHED;
    const { either } = steering[turn].touch;
    return (
      <GoTo travel={steering.travel} steer={either.at}>
        {steerPanelText(steerStop(either, steering.travel, model))}
      </GoTo>
    );
  };
  const low = () => {
    if (!lowering?.ok) return UNREACHED;
    return (
      <GoTo travel={lowering.touch.either.at} steer={lowering.steer}>
        {lowestText(lowering, model, format)}
      </GoTo>
    );
  };
  return (
    <>
      <dl className="map-limits" aria-busy={!isCurrent}>
        <dt>Here it steers left</dt>
        <dd>{steering ? steers("leftTurn") : "…"}</dd>
        <dt>right</dt>
        <dd>{steering ? steers("rightTurn") : "…"}</dd>
        <dt>goes down</dt>
        <dd className="map-low">{lowering ? low() : "…"}</dd>
      </dl>
      {limits && isCurrent && <CutShort study="ways" of={[limits]} />}
    </>
  );
}

/** How low the truck goes at one steering angle: keeping the allowance, and before something touches. */
export function lowestText(
  { steer, touch, allowance }: LowestTravels,
  model: Model,
  format: LengthFormat,
): string {
  const [kept, end] = [allowance, touch].map((way) => lowStop(way, steer, model, format));
  return lowWayText(kept!, end!, model.setup.allowance, format);
}

/** Where a way ends, in words; pressed, the truck goes there. */
export function GoTo({ travel, steer, children }: { travel: number; steer: number; children: ReactNode }) {
  const setPose = useWorkbench((s) => s.setPose);
  return (
    <button type="button" className="map-go" onClick={() => setPose(travel, steer)}>
      {children}
    </button>
  );
}
