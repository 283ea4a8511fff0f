import { useState } from "react";
import { endsTravels } from "../../../studies/map/wayEnds.ts";
import { lowestText } from "../../../studies/wording/beforeLockWords.ts";
import { nameOfHeight } from "../../../studies/wording/poseWords.ts";
import { standsText } from "../../../studies/wording/standsWords.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { GoTo, Stands, Turn, UNREACHED, WorseBefore } from "./Ways.tsx";

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

const TURNS = [
  ["left", "leftTurn"],
  ["right", "rightTurn"],
] as const;

function Ends({ truck }: { truck: Truck }) {
  const ends = useAnswer("wayEnds", truck);
  const locks = useAnswer("beforeLocks", truck);
  const format = useFormat();
  const { model } = truck;
  const answer = ends?.answer ?? null;
  if (ends?.failure) return <p role="alert">These could not be worked out: {ends.failure}</p>;
  return (
    <>
      <ul className="map-end-list" aria-busy={answer === null}>
        {(["left", "right"] as const).map((lock, i) => {
          const way = answer?.lowering[i];
          return (
            <li key={lock} className="map-end">
              <h3>Full {lock} lock</h3>
              <dl>
                <dt>goes down</dt>
                <dd>
                  {way === undefined ? (
                    "…"
                  ) : way.ok ? (
                    <>
                      <GoTo travel={way.touch.either.at} steer={way.steer}>
                        {keepTogether(lowestText(way, model, format))}
                      </GoTo>
                      <Stands way={way} model={model} format={format} />
                      <WorseBefore before={locks?.answer?.[i] ?? null} model={model} format={format} />
                    </>
                  ) : (
                    UNREACHED
                  )}
                </dd>
              </dl>
            </li>
          );
        })}
        {endsTravels(truck.setup).map((travel, i) => {
          const way = answer?.steering[i];
          return (
            <li key={travel} className="map-end">
              <h3>{nameOfHeight(travel, model, format)}</h3>
              <p className="map-stands">{keepTogether(standsText(travel, 0, model, format))}</p>
              <dl>
                {TURNS.map(([word, turn]) => (
                  <div key={word}>
                    <dt>steers {word}</dt>
                    <dd>
                      {way === undefined ? (
                        "…"
                      ) : way.ok ? (
                        <Turn travel={travel} turn={way[turn]} model={model} format={format} />
                      ) : (
                        UNREACHED
                      )}
                    </dd>
                  </div>
                ))}
              </dl>
            </li>
          );
        })}
      </ul>
      {ends && <CutShort study="ways" of={locks ? [ends, locks] : [ends]} />}
    </>
  );
}
