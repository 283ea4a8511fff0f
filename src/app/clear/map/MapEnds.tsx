import { Fragment, useState } from "react";
import { endsTravels, type WayEnds } from "../../../studies/map/wayEnds.ts";
import type { Model } from "../../../studies/model/model.ts";
import { nameOfHeight } from "../../../studies/wording/poseWords.ts";
import { standsText } from "../../../studies/wording/standsWords.ts";
import { CutShort } from "../../parts/CutShort.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { useAnswer } from "../../work/useAnswer.ts";
import { Lowest, Stands, Turn, UNREACHED, WorseBefore } from "./Ways.tsx";

/** How low it goes at each full lock; folded, how far it steers at each stance and at both ends of travel. Each can be gone to. */
export function MapEnds({ truck }: { truck: Truck }) {
  const [isOpen, setOpen] = useState(false);
  const ends = useAnswer("wayEnds", truck);
  const answer = ends?.answer ?? null;
  return (
    <>
      <h3 className="label map-from">How low at full lock</h3>
      {ends?.failure ? (
        <p role="alert">These could not be worked out: {ends.failure}</p>
      ) : (
        <>
          <dl className="map-locks" aria-busy={answer === null}>
            {LOCKS.map((lock, i) => (
              <Fragment key={lock}>
                <dt>full {lock} lock</dt>
                <dd>
                  <Low way={answer?.lowering[i]} model={truck.model} />
                </dd>
              </Fragment>
            ))}
          </dl>
          {ends && <CutShort study="ways" of={[ends]} />}
          <details className="map-ends" onToggle={(event) => setOpen(event.currentTarget.open)}>
            <summary>How low and how far it steers, at each height and full lock</summary>
            {isOpen && <Ends truck={truck} answer={answer} />}
          </details>
        </>
      )}
    </>
  );
}

/** How low it goes at a full lock. @param way undefined = not known yet */
function Low({ way, model }: { way: WayEnds["lowering"][number] | undefined; model: Model }) {
  const format = useFormat();
  if (way === undefined) return "…";
  if (!way.ok) return UNREACHED;
  return <Lowest way={way} model={model} format={format} />;
}

const LOCKS = ["left", "right"] as const;

const TURNS = [
  ["left", "leftTurn"],
  ["right", "rightTurn"],
] as const;

function Ends({ truck, answer }: { truck: Truck; answer: WayEnds | null }) {
  const locks = useAnswer("beforeLocks", truck);
  const format = useFormat();
  const { model } = truck;
  return (
    <>
      <ul className="map-end-list" aria-busy={answer === null}>
        {LOCKS.map((lock, i) => {
          const way = answer?.lowering[i];
          return (
            <li key={lock} className="map-end">
              <h3>Full {lock} lock</h3>
              <dl>
                <dt>goes down</dt>
                <dd>
                  <Low way={way} model={model} />
                  {way?.ok && (
                    <>
                      <Stands way={way} model={model} format={format} />
                      <WorseBefore before={locks?.answer?.[i] ?? null} model={model} format={format} />
                    </>
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
                    <dt>from straight, steers {word}</dt>
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
      {locks && <CutShort study="ways" of={[locks]} />}
    </>
  );
}
