import "./undoneNote.css";
import { useEffect, useState } from "react";
import { worksheetOf } from "../../../setup/worksheet/worksheetState.ts";
import { readingName } from "../../../studies/wording/worksheetWords.ts";
import { workbench } from "../../state/workbench.ts";
import { stepWords, undoneWords } from "../../words/stepWords.ts";

/** ms that it stays: long enough to be read twice. */
const STAYS = 6000;

type Slice = Parameters<typeof stepWords>[0];

/** Says for a moment what a step taken back or again changed, near the thumb: what it changed may be out of sight. */
export function UndoneNote() {
  const [text, setText] = useState("");
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
        if (back > 0) setText(`Undone: ${undoneWords(undone as Slice, current, nameOf)}`);
        else if (isAgain) setText(`Done again: ${stepWords(redone as Slice, current)}`);
        else if (done !== 0) setText("");
      }),
    [],
  );
  useEffect(() => {
    if (text === "") return;
    const timer = setTimeout(() => setText(""), STAYS);
    return () => clearTimeout(timer);
  }, [text]);
  return (
    <p role="status" className="undone-note">
      {text}
    </p>
  );
}

function nameOf(document: unknown, at: number): string {
  return readingName(worksheetOf(document), at);
}
