import type { ReactNode } from "react";
import type { BeforeLock } from "../../../studies/map/beforeLock.ts";
import type { TurnLimits } from "../../../studies/map/steerLimits.ts";
import type { Model } from "../../../studies/model/model.ts";
import { higherBeforeText } from "../../../studies/wording/beforeLockWords.ts";
import { standsText } from "../../../studies/wording/standsWords.ts";
import { steerStop } from "../../../studies/wording/stopFacts.ts";
import { steerWayText } from "../../../studies/wording/stopTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

/** No pose to start from. */
export const UNREACHED = "the linkage cannot go there";

/** Where a way ends, in words; pressed, the truck goes there. */
export function GoTo({ travel, steer, children }: { travel: number; steer: number; children: ReactNode }) {
  const setPose = useWorkbench((s) => s.setPose);
  return (
    <button type="button" className="map-go" onClick={() => setPose(travel, steer)}>
      {children}
    </button>
  );
}

type TurnProps = { travel: number; turn: TurnLimits; model: Model; format: LengthFormat };

/** How far it steers one way at a height. */
export function Turn({ travel, turn: { touch, allowance }, model, format }: TurnProps) {
  const [kept, end] = [allowance, touch].map(({ either }) => steerStop(either, travel, model));
  return (
    <GoTo travel={travel} steer={touch.either.at}>
      {keepTogether(steerWayText(kept!, end!, model.setup.allowance, format))}
    </GoTo>
  );
}

type AtProps = { travel: number; steer: number; model: Model; format: LengthFormat };

/** How the truck stands where a way ends, by what a shop measures. */
export function Stands({ travel, steer, model, format }: AtProps) {
  return <p className="map-stands">{keepTogether(`There: ${standsText(travel, steer, model, format)}`)}</p>;
}

type WorseProps = { before: BeforeLock | null; model: Model; format: LengthFormat };

/** Where short of a full lock the truck does not come as low; that it is nowhere worse, of what was looked at, where it is not. */
export function WorseBefore({ before, model, format }: WorseProps) {
  const told = before?.higher ? higherBeforeText(before, model, format) : "";
  if (!before?.higher || told === "")
    return before && <p className="map-stands">At no tenth of lock on the way there is it worse.</p>;
  const { touch, steer } = before.higher;
  return (
    <div className="map-worse">
      <GoTo travel={touch.either.at} steer={steer}>
        {keepTogether(`Worse on the way there: ${told}`)}
      </GoTo>
    </div>
  );
}
