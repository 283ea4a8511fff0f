import { type ReactNode, useEffect, useMemo, useRef } from "react";
import { useStore } from "zustand";
import { changeTold, type KnownTruck } from "../../studies/wording/lastChangeWords.ts";
import { followAddress } from "../state/address.ts";
import { forgetUndone, lastStep, type StepKind } from "../state/lastStep.ts";
import { pointerHeld } from "../state/pointerHeld.ts";
import { type Truck, trucks } from "../state/truck.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { keepTogether } from "../words/keyWords.ts";
import { useAnswer } from "../work/useAnswer.ts";

export type LastChangeProps = {
  truck: Truck;
  /** Only what the worst gap was, beside what it is; default false. */
  isShort?: boolean;
};

const KIND_WORDS: Readonly<Record<StepKind, string>> = {
  done: "Last change",
  undone: "Undone",
  again: "Done again",
};

/** What the last step did to the main numbers, as long as `lastStep` has it; as it is, while something is dragged. */
export function LastChange(props: LastChangeProps) {
  const isHeld = useStore(pointerHeld, (s) => s.isHeld);
  const told = useTold(props);
  const shown = useRef<ReactNode>(null);
  if (!isHeld) shown.current = told;
  return shown.current;
}

function useTold({ truck, isShort = false }: LastChangeProps): ReactNode {
  const format = useFormat();
  const was = useTruckBefore(truck);
  useEffect(() => followAddress(forgetUndone), []);
  const kind = useStore(lastStep, (s) => s.kind);
  const isGesturing = useWorkbench((s) => s.isGesturing);
  // One after the other, what is on the board first: what is only told beside it takes nothing from that.
  const check = useAnswer("check", truck);
  const before = check?.answer && !isGesturing ? was : null;
  const checkBefore = useAnswer("check", before);
  const isKnown = checkBefore?.answer != null;
  const ways = useAnswer("wayEnds", isKnown ? truck : null);
  const waysBefore = useAnswer("wayEnds", isKnown && ways?.answer ? before : null);
  if (before === null || !check?.answer || !checkBefore?.answer) return null;
  const {
    worst,
    before: short,
    others,
  } = changeTold(known(before, checkBefore.answer, waysBefore), known(truck, check.answer, ways), format);
  return (
    <>
      <p aria-live="polite">
        {keepTogether(isShort ? short : [`${KIND_WORDS[kind]}: ${worst}`, ...others].join("; "))}
      </p>
      <button
        type="button"
        className="small-button"
        aria-label="Dismiss what the last change did"
        onClick={() => lastStep.setState({ before: null })}
      >
        ✕
      </button>
    </>
  );
}

/** The truck shown, as it was before the last step; null = there is no such. */
function useTruckBefore(truck: Truck): Truck | null {
  const before = useStore(lastStep, (s) => s.before);
  const documentId = useWorkbench((s) => s.documentId);
  const variant = useWorkbench((s) => s.variant);
  const isAligned = useWorkbench((s) => s.isAligned);
  return useMemo(() => {
    const { document, file = "", meshes } = before ?? {};
    if (!document || !meshes || before?.documentId !== documentId) return null;
    const made = trucks.make(document, file, variant, meshes, isAligned);
    return made.ok && made.value.motion !== truck.motion ? made.value : null;
  }, [before, documentId, variant, isAligned, truck]);
}

function known(
  { model }: Truck,
  report: KnownTruck["report"],
  ways: { readonly answer: KnownTruck["ways"]; readonly isCut: boolean } | null,
): KnownTruck {
  return { model, report, ways: ways?.isCut ? null : (ways?.answer ?? null) };
}
