import { useMemo, useRef } from "react";
import type { Fit } from "../../../studies/chart/readFits.ts";
import { nearestCell } from "../../../studies/wording/sheetRows.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { useIsSeen } from "../../parts/useIsSeen.ts";
import type { Truck } from "../../state/truck.ts";
import { useDoubts } from "../../state/useDoubts.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { useAnswer, useKnown } from "../../work/useAnswer.ts";
import { fittedTruck } from "./fittedTruck.ts";

export type ListedAnswerProps = {
  fit: Fit;
  /** The truck it is tried on: a variant, null = the setup as it stands. */
  base: string | null;
};

/** What a truck comes to with a wheel of the list on it. */
export function ListedAnswer({ fit, base }: ListedAnswerProps) {
  const good = useWorkbench((s) => s.good);
  const file = useWorkbench((s) => s.file);
  const meshes = useWorkbench((s) => s.meshes);
  const isAligned = useWorkbench((s) => s.isAligned);
  const made = useMemo(
    () => fittedTruck({ good, file, meshes, isAligned }, base, fit),
    [good, file, meshes, isAligned, base, fit],
  );
  if (made === null) return null;
  return made.ok ? (
    <AnswerOf truck={made.value} />
  ) : (
    <span className="listed-answer">This truck cannot have it: {made.issues[0]!.mend}.</span>
  );
}

/** Worked out while it is seen: a shop may list hundreds. */
function AnswerOf({ truck }: { truck: Truck }) {
  const line = useRef<HTMLSpanElement>(null);
  const isSeen = useIsSeen(line);
  const format = useFormat();
  const doubtsOf = useDoubts();
  useAnswer("check", isSeen ? truck : null);
  const { answer: report, failure } = useKnown("check", truck);
  const answer = { report, failure, steering: null, heights: null };
  const { word, text } = nearestCell({ truck, answer, doubts: doubtsOf(truck) }, format);
  return (
    <span ref={line} className="listed-answer" data-answer={word ?? undefined}>
      {word && <StateMark word={word} />} {keepTogether(text)}
    </span>
  );
}
