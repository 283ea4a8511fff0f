import { useState } from "react";
import { keyText } from "../../../setup/types/keyPath.ts";
import { worksheetOf } from "../../../setup/worksheet/worksheetState.ts";
import { lower } from "../../../studies/wording/asBuiltWords.ts";
import { faultPointer } from "../../../studies/wording/readingsTold.ts";
import { readingName } from "../../../studies/wording/worksheetWords.ts";
import { goToStation, useStation } from "../../state/address.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { type Contradiction, useContradicting } from "./useContradicting.ts";
import { goToLine, useWorksheetView, worksheetView } from "./worksheetView.ts";

/**
 * That readings make no truck together, in a line that leads to the one to look at again: the worksheet says the rest, and while that
 * reading's card is open, or the note under it is in view, this is not there. It can be put away.
 */
export function ReadingsBar() {
  const found = useContradicting();
  const [away, setAway] = useState<string | null>(null);
  const at = useWorksheetView((s) => s.at);
  const isFields = useWorksheetView((s) => s.isFields);
  const isHere = useStation() === "measure" && !isFields;
  if (found === null) return null;
  const key = `${found.issue.key} ${found.issue.value}`;
  const isOpen = found.inTheWay.some((one) => keyText(["readings", one, "is"]) === at);
  if (away === key || (isHere && isOpen)) return null;
  return (
    <section
      className="issue-bar readings-bar"
      role="alert"
      aria-label="Problems"
      data-here={isHere || undefined}
    >
      <p>
        <span aria-hidden="true">✕ </span>
        <Pointer found={found} />
      </p>
      <button type="button" className="button" aria-label="Dismiss" onClick={() => setAway(key)}>
        ✕
      </button>
    </section>
  );
}

/** One reading, or the worksheet where none is in the way by itself. */
function Pointer({ found: { inTheWay } }: { found: Contradiction }) {
  const document = useWorkbench(shownDocument);
  const states = worksheetOf(document);
  const go = (open: () => void) => {
    worksheetView.setState({ isFields: false });
    goToStation("measure");
    open();
  };
  return (
    <>
      {faultPointer(inTheWay.length)}{" "}
      {inTheWay.length === 0 && (
        <button type="button" className="link-button" onClick={() => go(seeNote)}>
          to the worksheet
        </button>
      )}
      {inTheWay.map((one, i) => (
        <span key={one}>
          {i > 0 && ", "}
          <button
            type="button"
            className="link-button"
            onClick={() => go(() => goToLine(["readings", one, "is"]))}
          >
            {lower(readingName(states, one))}
          </button>
        </span>
      ))}
    </>
  );
}

function seeNote(): void {
  document.querySelector(".readings-told")?.scrollIntoView({ block: "center" });
}
