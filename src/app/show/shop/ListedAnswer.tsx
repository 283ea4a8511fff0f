import { useMemo, useRef } from "react";
import type { Result } from "../../../setup/types/types.ts";
import type { Fit } from "../../../studies/chart/readFits.ts";
import { CHECKING, nearestCell } from "../../../studies/wording/sheetRows.ts";
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

/**
 * What a truck comes to with a wheel of the list on it. A shop may list hundreds: the truck is put together once its line is first
 * seen, and answered for as long as it is.
 */
export function ListedAnswer({ fit, base }: ListedAnswerProps) {
  const good = useWorkbench((s) => s.good);
  const file = useWorkbench((s) => s.file);
  const meshes = useWorkbench((s) => s.meshes);
  const isAligned = useWorkbench((s) => s.isAligned);
  const line = useRef<HTMLSpanElement>(null);
  const isSeen = useIsSeen(line);
  const of = useMemo(
    () => ({ good, file, meshes, isAligned, base, fit }),
    [good, file, meshes, isAligned, base, fit],
  );
  // What was put together stays while nothing it is of changes, seen or not.
  const last = useRef<{ readonly of: object; readonly made: Result<Truck> | null } | null>(null);
  if (isSeen && last.current?.of !== of) last.current = { of, made: fittedTruck(of, base, fit) };
  const made = last.current?.of === of ? last.current.made : null;
  return (
    <span ref={line}>
      {made?.ok ? (
        <AnswerOf truck={made.value} isSeen={isSeen} />
      ) : (
        <span className="listed-answer">
          {made === null ? CHECKING : `This truck cannot have it: ${made.issues[0]!.mend}.`}
        </span>
      )}
    </span>
  );
}

function AnswerOf({ truck, isSeen }: { truck: Truck; isSeen: boolean }) {
  const format = useFormat();
  const doubtsOf = useDoubts();
  useAnswer("check", isSeen ? truck : null);
  const { answer: report, failure } = useKnown("check", truck);
  const answer = { report, failure, steering: null, heights: null };
  const { word, text } = nearestCell({ truck, answer, doubts: doubtsOf(truck) }, format);
  return (
    <span className="listed-answer" data-answer={word ?? undefined}>
      {word && <StateMark word={word} />} {keepTogether(text)}
    </span>
  );
}
