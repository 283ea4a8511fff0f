import { useState } from "react";
import type { TurnLimits } from "../../../studies/map/steerLimits.ts";
import { endsTravels } from "../../../studies/map/wayEnds.ts";
import { nameOfHeight } from "../../../studies/wording/poseWords.ts";
import { steerStop } from "../../../studies/wording/stopFacts.ts";
import { steerPanelText } from "../../../studies/wording/stopTexts.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { GoTo, lowestText, UNREACHED } from "./MapLimits.tsx";

/** How far it steers at each stance and at both ends of travel, how low it goes at each full lock; each can be gone to. */
export function MapEnds({ truck }: { truck: Truck }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className="map-ends" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>How low and how far it steers, at each height and full lock</summary>
      {isOpen && <Ends truck={truck} />}
    </details>
  );
}

function Ends({ truck }: { truck: Truck }) {
  const ends = useAnswer("wayEnds", truck);
  const format = useFormat();
  const { model } = truck;
  const answer = ends?.answer ?? null;
  if (ends?.failure) return <p role="alert">These could not be worked out: {ends.failure}</p>;
  const turn = (travel: number, { touch: { either } }: TurnLimits) => (
    <GoTo travel={travel} steer={either.at}>
      {steerPanelText(steerStop(either, travel, model))}
    </GoTo>
  );
  return (
    <>
      <dl className="map-limits" aria-busy={answer === null}>
        {endsTravels(truck.setup).map((travel, i) => {
          const way = answer?.steering[i];
          return (
            <div key={travel} className="map-end">
              <dt>{nameOfHeight(travel, model, format)}: steers left</dt>
              <dd>{way === undefined ? "…" : way.ok ? turn(travel, way.leftTurn) : UNREACHED}</dd>
              <dt>right</dt>
              <dd>{way === undefined ? "…" : way.ok ? turn(travel, way.rightTurn) : UNREACHED}</dd>
            </div>
          );
        })}
        {(["left", "right"] as const).map((lock, i) => {
          const way = answer?.lowering[i];
          return (
            <div key={lock} className="map-end">
              <dt>full {lock} lock: goes down</dt>
              <dd>
                {way === undefined ? (
                  "…"
                ) : way.ok ? (
                  <GoTo travel={way.touch.either.at} steer={way.steer}>
                    {lowestText(way, model, format)}
                  </GoTo>
                ) : (
                  UNREACHED
                )}
              </dd>
            </div>
          );
        })}
      </dl>
      {ends && <CutShort study="ways" of={[ends]} />}
    </>
  );
}
