import { TOLD_AT_LOCK } from "../../../studies/wording/beforeLockWords.ts";
import { Meaning } from "../../docs/Meaning.tsx";
import { CutShort } from "../../parts/CutShort.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { Lowest, Stands, Steers, UNREACHED, WorseBefore } from "./Ways.tsx";

export type MapLimitsProps = {
  truck: Truck;
};

/** The two answers people ask of a map, at the pose shown: how far it steers at this height, how low at this steer. */
export function MapLimits({ truck }: MapLimitsProps) {
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const limits = useAnswer("poseLimits", truck, { question: { travel, steer } });
  const locks = useAnswer("beforeLocks", Math.abs(steer) === 1 ? truck : null);
  const format = useFormat();
  // What is shown may be of the pose before, until the new one's is worked out.
  const isCurrent = limits?.question?.travel === travel && limits.question.steer === steer;
  const { model } = truck;
  const { steering, lowering } = limits?.answer ?? {};
  const steers = (turn: "leftTurn" | "rightTurn") => {
    if (!steering?.ok) return UNREACHED;
    return <Steers travel={steering.travel} turn={steering[turn]} model={model} />;
  };
  const low = () => {
    if (!lowering?.ok) return UNREACHED;
    return <Lowest way={lowering} model={model} format={format} />;
  };
  const isLock = Math.abs(steer) === 1;
  return (
    <>
      <h2 className="label map-from">At the height and steering shown</h2>
      <dl className="map-limits" aria-busy={!isCurrent}>
        <dt>
          from straight, steers left <Meaning of="how far it steers" />
        </dt>
        <dd>{steering ? steers("leftTurn") : "…"}</dd>
        <dt>from straight, steers right</dt>
        <dd>{steering ? steers("rightTurn") : "…"}</dd>
        <dt>
          goes down <Meaning of="how low it goes" />
        </dt>
        <dd className="map-low">{lowering ? low() : "…"}</dd>
      </dl>
      <div className="map-there">
        {lowering?.ok && <Stands way={lowering} model={model} format={format} />}
      </div>
      <div className="map-there">
        {!isLock && <p className="map-stands">{TOLD_AT_LOCK}</p>}
        {isLock && isCurrent && locks?.answer && (
          <WorseBefore before={locks.answer[steer > 0 ? 0 : 1] ?? null} model={model} format={format} />
        )}
      </div>
      {limits && isCurrent && <CutShort study="ways" of={isLock && locks ? [limits, locks] : [limits]} />}
    </>
  );
}
