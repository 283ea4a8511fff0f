import { useDeferredValue, useMemo } from "react";
import { nearerBefore } from "../../studies/map/beforeLock.ts";
import {
  longestNearerSentence,
  NEARER_TOLD_AT_LOCK,
  NOWHERE_NEARER,
  nearerBeforeSentence,
} from "../../studies/wording/beforeLockWords.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import { focusOn } from "../parts/focusOn.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keyWords.ts";

const GO_THERE = "Go there";

export type BeforeLockProps = {
  truck: Truck;
};

/** At a full lock: that it comes nearer on the way there, and the way to that pose. Its room stands at every pose. */
export function BeforeLock({ truck }: BeforeLockProps) {
  const steer = useWorkbench((s) => s.steer);
  const format = useFormat();
  const { model } = truck;
  const longest = useMemo(() => longestNearerSentence(model, format), [model, format]);
  return (
    <div className="pose-before" data-longest={`${keepTogether(longest)} ${GO_THERE}`}>
      {Math.abs(steer) === 1 ? (
        <Nearer truck={truck} lock={steer > 0 ? 1 : -1} />
      ) : (
        <p>{NEARER_TOLD_AT_LOCK}</p>
      )}
    </div>
  );
}

function Nearer({ truck, lock }: BeforeLockProps & { lock: 1 | -1 }) {
  const travel = useDeferredValue(useWorkbench((s) => s.travel));
  const setPose = useWorkbench((s) => s.setPose);
  const format = useFormat();
  const { model } = useDeferredValue(truck);
  const nearer = useMemo(() => nearerBefore(model, travel, lock), [model, travel, lock]);
  const told = nearer && nearerBeforeSentence(nearer, travel, model, format);
  if (!nearer || !told)
    return solvePose(model.frontEnd, travel, lock).ok && <p>{keepTogether(NOWHERE_NEARER)}</p>;
  return (
    <p>
      {keepTogether(told)}{" "}
      <button
        type="button"
        className="fold-link"
        onClick={({ detail }) => {
          setPose(travel, nearer.steer);
          // It is gone then: the keyboard goes on with what turns the wheels.
          if (detail === 0) focusOn(document.querySelector<HTMLElement>('[data-scale="Steering"]'));
        }}
      >
        {GO_THERE}
      </button>
    </p>
  );
}
