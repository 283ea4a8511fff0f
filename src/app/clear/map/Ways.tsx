import { memo, type ReactNode } from "react";
import type { BeforeLock } from "../../../studies/map/beforeLock.ts";
import type { LowestTravels } from "../../../studies/map/lowestTravels.ts";
import type { TurnLimits } from "../../../studies/map/steerLimits.ts";
import type { Model } from "../../../studies/model/model.ts";
import {
  isHigherBefore,
  lowestParts,
  nowhereHigherSentence,
} from "../../../studies/wording/beforeLockWords.ts";
import { amountWords } from "../../../studies/wording/lengths.ts";
import { lockText } from "../../../studies/wording/poseWords.ts";
import { safeLength } from "../../../studies/wording/safeSide.ts";
import { lowestStandsText } from "../../../studies/wording/standsWords.ts";
import { steerStop } from "../../../studies/wording/stopFacts.ts";
import { steerPanelText, steerWayText } from "../../../studies/wording/stopTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

/** No pose to start from. */
export const UNREACHED = "the linkage cannot go there";

/** Where a way ends, in words; pressed, the truck goes there. */
function GoTo({ travel, steer, children }: { travel: number; steer: number; children: ReactNode }) {
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

type SteersProps = Omit<TurnProps, "format">;

/** How far it steers one way at a height until something is met. */
export const Steers = memo(function Steers({ travel, turn: { touch }, model }: SteersProps) {
  return (
    <GoTo travel={travel} steer={touch.either.at}>
      {keepTogether(steerPanelText(steerStop(touch.either, travel, model)))}
    </GoTo>
  );
});

type AtProps = { way: LowestTravels; model: Model; format: LengthFormat };

/**
 * How low it goes at a steering angle: two places to go to, down to where it ends and to where the allowance is kept; each as it is
 * told, so that the truck stands where the words say.
 */
export const Lowest = memo(function Lowest({ way, model, format }: AtProps) {
  const { kept, end } = lowestParts(way, model, format);
  const { stop, at } = way.touch.either;
  return (
    <div className="map-lowest">
      <GoTo travel={stop === "touch" ? safeLength(at, "down", format) : at} steer={way.steer}>
        {keepTogether(end)}
      </GoTo>
      {kept?.isPlace && (
        <GoTo travel={safeLength(way.allowance.either.at, "down", format)} steer={way.steer}>
          {keepTogether(kept.text)}
        </GoTo>
      )}
      {kept?.isPlace === false && <p>{keepTogether(kept.text)}</p>}
    </div>
  );
});

/** How the truck stands as low as it goes, by what a shop measures; nothing where it is not known where that is. */
export const Stands = memo(function Stands({ way, model, format }: AtProps) {
  const isKept = lowestParts(way, model, format).kept?.isPlace === true;
  const told = lowestStandsText(way, isKept, model, format);
  if (told === "") return null;
  const least = amountWords(safeLength(model.setup.allowance, "down", format), format);
  return (
    <p className="map-stands">{keepTogether(`${isKept ? `Keeping ${least}` : "Where it ends"}: ${told}`)}</p>
  );
});

type WorseProps = { before: BeforeLock | null; model: Model; format: LengthFormat };

/** Where short of a full lock the truck does not come as low; that it is nowhere worse, of what was looked at, where it is not. */
export function WorseBefore({ before, model, format }: WorseProps) {
  if (before === null) return null;
  if (before.higher === null || !isHigherBefore(before, model, format))
    return <p className="map-stands">{nowhereHigherSentence(before)}</p>;
  return (
    <div className="map-worse">
      <p>Worse on the way there, at {lockText(before.higher.steer)}:</p>
      <Lowest way={before.higher} model={model} format={format} />
    </div>
  );
}
