import { useDeferredValue, useMemo } from "react";
import { Budget } from "../../studies/numeric/budget.ts";
import { barredAt, heightSentence } from "../../studies/wording/heightWords.ts";
import { stanceAt } from "../../studies/wording/poseWords.ts";
import { StateMark } from "../parts/StateMark.tsx";
import type { Truck } from "../state/truck.ts";
import { useFormat, useMovedPose, useWorkbench } from "../state/useWorkbench.ts";

export type StanceButtonsProps = {
  truck: Truck;
};

/** Seconds for all stances together: what stops a truck is a march along its travel, done while it is drawn. */
const SECONDS = 0.1;

/** The setup's named heights, those the truck cannot stand at marked. Draws nothing when it has none. */
export function StanceButtons({ truck }: StanceButtonsProps) {
  const setTravel = useWorkbench((s) => s.setTravel);
  const barred = useBarred(truck);
  const standing = useMovedPose((s) => stanceAt(s.travel, truck.setup));
  if (truck.setup.stances.length === 0) return null;
  return (
    <div className="stances">
      {truck.setup.stances.map((stance) => {
        const why = barred.get(stance.name);
        return (
          <button
            key={stance.name}
            type="button"
            className="button"
            aria-pressed={stance.name === standing}
            title={why}
            aria-description={why}
            onClick={() => setTravel(stance.travel)}
          >
            {why !== undefined && <StateMark word="close" />} {stance.name}
          </button>
        );
      })}
    </div>
  );
}

/** Why a truck cannot stand at those of its stances that it cannot stand at. */
function useBarred({ model }: Truck): ReadonlyMap<string, string> {
  const format = useFormat();
  const shown = useDeferredValue(model);
  return useMemo(() => {
    const budget = Budget.of(SECONDS, () => performance.now());
    return new Map(
      shown.setup.stances.flatMap(({ name, travel }) => {
        const facts = barredAt(travel, shown, format, budget);
        return facts === null ? [] : [[name, heightSentence(facts, shown, format)] as const];
      }),
    );
  }, [shown, format]);
}
