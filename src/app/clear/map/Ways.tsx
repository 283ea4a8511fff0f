import type { ReactNode } from "react";
import type { BeforeLock } from "../../../studies/map/beforeLock.ts";
import type { LowestTravels } from "../../../studies/map/lowestTravels.ts";
import type { TurnLimits } from "../../../studies/map/steerLimits.ts";
import type { Model } from "../../../studies/model/model.ts";
import { higherBeforeText, nowhereHigherSentence } from "../../../studies/wording/beforeLockWords.ts";
import { lowestStandsText } from "../../../studies/wording/standsWords.ts";
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

type AtProps = { way: LowestTravels; model: Model; format: LengthFormat };

/** How the truck stands where a way down ends, by what a shop measures; nothing where it is not known where that is. */
export function Stands({ way, model, format }: AtProps) {
  const told = lowestStandsText(way, model, format);
  return told === "" ? null : <p className="map-stands">{keepTogether(`There: ${told}`)}</p>;
}

type WorseProps = { before: BeforeLock | null; model: Model; format: LengthFormat };

/** Where short of a full lock the truck does not come as low; that it is nowhere worse, of what was looked at, where it is not. */
export function WorseBefore({ before, model, format }: WorseProps) {
  if (before === null) return null;
  const told = higherBeforeText(before, model, format);
  if (before.higher === null || told === "")
    return <p className="map-stands">{nowhereHigherSentence(before)}</p>;
  const { touch, steer } = before.higher;
  return (
    <div className="map-worse">
      <GoTo travel={touch.either.at} steer={steer}>
        {keepTogether(`Worse on the way there: ${told}`)}
      </GoTo>
    </div>
  );
}
