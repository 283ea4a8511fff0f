import { useDeferredValue, useMemo } from "react";
import { nearerBefore } from "../../studies/map/beforeLock.ts";
import { nearerBeforeSentence } from "../../studies/wording/beforeLockWords.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keyWords.ts";

export type BeforeLockProps = {
  truck: Truck;
};

/** At a full lock: that it comes nearer on the way there, and the way to that pose; nothing where it does not. */
export function BeforeLock({ truck }: BeforeLockProps) {
  const steer = useWorkbench((s) => s.steer);
  return Math.abs(steer) === 1 ? <Nearer truck={truck} lock={steer > 0 ? 1 : -1} /> : null;
}

function Nearer({ truck, lock }: BeforeLockProps & { lock: 1 | -1 }) {
  const travel = useDeferredValue(useWorkbench((s) => s.travel));
  const setPose = useWorkbench((s) => s.setPose);
  const format = useFormat();
  const { model } = useDeferredValue(truck);
  const nearer = useMemo(() => nearerBefore(model, travel, lock), [model, travel, lock]);
  const told = nearer && nearerBeforeSentence(nearer, travel, model, format);
  if (!nearer || !told) return null;
  return (
    <p className="pose-before">
      {keepTogether(told)}{" "}
      <button type="button" className="fold-link" onClick={() => setPose(travel, nearer.steer)}>
        Go there
      </button>
    </p>
  );
}
