import "./poseSentence.css";
import { poseSentence } from "../../studies/wording/poseSentence.ts";
import { shownGaps, shownPose } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import { useWaitingFor } from "../state/useWaitingFor.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keyWords.ts";
import { BeforeLock } from "./BeforeLock.tsx";

export type PoseSentenceProps = {
  truck: Truck;
};

/** What touches what at the pose on the stage. */
export function PoseSentence({ truck }: PoseSentenceProps) {
  const pose = useWorkbench(shownPose);
  const gaps = useWorkbench(shownGaps);
  const format = useFormat();
  const isAssumed = useWaitingFor() !== null;
  return (
    <section className="pose-sentence" aria-labelledby="pose-sentence-title">
      <h2 id="pose-sentence-title" className="label">
        At this height and steering angle{isAssumed && ", of assumed numbers"}
      </h2>
      <p aria-live="polite">{pose && keepTogether(poseSentence(gaps, pose, truck.model, format))}</p>
      <BeforeLock truck={truck} />
    </section>
  );
}
