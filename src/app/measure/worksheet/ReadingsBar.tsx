import { keyText } from "../../../setup/types/keyPath.ts";
import { worksheetOf } from "../../../setup/worksheet/worksheetState.ts";
import { lower } from "../../../studies/wording/nameWords.ts";
import { FAULT_POINTER } from "../../../studies/wording/readingsTold.ts";
import { readingName } from "../../../studies/wording/worksheetWords.ts";
import { goOnFrom } from "../../parts/focusOn.ts";
import { whenThere } from "../../parts/whenThere.ts";
import { goToStation, useStation } from "../../state/address.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { goToLine, useWorksheetView, worksheetView } from "./worksheetView.ts";

export type ReadingsBarProps = {
  /** Readings without any one of which the truck goes together, by their places; one at least. */
  inTheWay: readonly number[];
  onDismiss: () => void;
};

/**
 * That readings make no truck together, in a line that leads to the one to look at again: the worksheet says the rest, and while that
 * reading's card is open, or the note under it is in view, this is not there. It can be put away.
 */
export function ReadingsBar({ inTheWay, onDismiss }: ReadingsBarProps) {
  const at = useWorksheetView((s) => s.at);
  const isFields = useWorksheetView((s) => s.isFields);
  const isHere = useStation() === "measure" && !isFields;
  const isOpen = inTheWay.some((one) => keyText(["readings", one, "is"]) === at);
  if (isHere && isOpen) return null;
  return (
    <section
      className="issue-bar readings-bar"
      role="alert"
      aria-label="Problems"
      data-here={isHere || undefined}
    >
      <p>
        <span aria-hidden="true">✕ </span>
        <Pointer inTheWay={inTheWay} />
      </p>
      <button
        type="button"
        className="button"
        aria-label="Dismiss"
        onClick={(event) => {
          goOnFrom(event);
          onDismiss();
        }}
      >
        ✕
      </button>
    </section>
  );
}

/** The readings in the way, each a way to its card. */
function Pointer({ inTheWay }: Pick<ReadingsBarProps, "inTheWay">) {
  const document = useWorkbench(shownDocument);
  const states = worksheetOf(document);
  return (
    <>
      {FAULT_POINTER}{" "}
      {inTheWay.map((one, i) => (
        <span key={one}>
          {i > 0 && ", "}
          <button
            type="button"
            className="link-button"
            onClick={() => {
              showWorksheet();
              goToLine(["readings", one, "is"]);
            }}
          >
            {lower(readingName(states, one))}
          </button>
        </span>
      ))}
    </>
  );
}

/** The way to what the readings say, for what no single one of them is in the way of. */
export function ToTheWorksheet() {
  return (
    <>
      {" What the readings say: "}
      <button type="button" className="link-button" onClick={seeNote}>
        to the worksheet
      </button>
    </>
  );
}

function showWorksheet(): void {
  worksheetView.setState({ isFields: false });
  goToStation("measure");
}

/** Its station may have to be drawn first. */
function seeNote(): void {
  showWorksheet();
  whenThere(
    () => document.querySelector<HTMLElement>(".readings-told"),
    (note) => note.scrollIntoView({ block: "center" }),
  );
}
