import "./undoneNote.css";
import { useEffect, useState } from "react";
import { worksheetOf } from "../../setup/worksheet/worksheetState.ts";
import { readingName } from "../../studies/wording/worksheetWords.ts";
import { workbench } from "../state/workbench.ts";
import { stepWords, undoneWords } from "../words/stepWords.ts";

/** ms that it stays: long enough to be read twice. */
const STAYS = 6000;

type Slice = Parameters<typeof stepWords>[0];

/**
 * Says for a moment what a step taken back or again changed, near the thumb: what it changed may be out of sight. A window over the
 * page has its own: what stands outside is not told while it is open.
 */
export function UndoneNote() {
  // The same sentence twice is told twice, each for its time.
  const [told, setTold] = useState<{ readonly text: string; readonly turn: number } | null>(null);
  useEffect(
    () =>
      workbench.temporal.subscribe((now, then) => {
        const back = now.futureStates.length - then.futureStates.length;
        const done = now.pastStates.length - then.pastStates.length;
        const current = workbench.getState();
        const undone = now.futureStates[then.futureStates.length];
        const redone = now.pastStates[then.pastStates.length];
        // The list that steps are taken from stays the same; a new step begins another.
        const isAgain = done > 0 && now.futureStates === then.futureStates;
        const say = (text: string) => setTold((last) => ({ text, turn: (last?.turn ?? 0) + 1 }));
        if (back > 0) say(`Undone: ${undoneWords(undone as Slice, current, nameOf)}`);
        else if (isAgain) say(`Done again: ${stepWords(redone as Slice, current)}`);
        else if (done !== 0) setTold(null);
      }),
    [],
  );
  useEffect(() => {
    if (told === null) return;
    const timer = setTimeout(() => setTold(null), STAYS);
    return () => clearTimeout(timer);
  }, [told]);
  return (
    <p role="status" className="undone-note">
      {told && <span key={told.turn}>{told.text}</span>}
    </p>
  );
}

function nameOf(document: unknown, at: number): string {
  return readingName(worksheetOf(document), at);
}
