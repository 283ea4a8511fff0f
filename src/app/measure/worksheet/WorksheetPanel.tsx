import "./worksheet.css";
import "./worksheetList.css";
import "./printedWorksheet.css";
import { type ReactNode, useEffect, useMemo, useState } from "react";
import { variantNames } from "../../../setup/editing/resolveShown.ts";
import { DEFAULT_NAME } from "../../../setup/types/defaults.ts";
import { keyText, valueAt } from "../../../setup/types/keyPath.ts";
import { WORKSHEET_LINES } from "../../../setup/worksheet/worksheetLines.ts";
import {
  type LineState,
  progressOf,
  readingsToAdd,
  worksheetOf,
} from "../../../setup/worksheet/worksheetState.ts";
import { measureText } from "../../../studies/documents/measureJson.ts";
import { fileStem } from "../../../studies/wording/fileStem.ts";
import { NOTHING_READ } from "../../../studies/wording/readingsTold.ts";
import { progressWords } from "../../../studies/wording/worksheetNotes.ts";
import { readingName } from "../../../studies/wording/worksheetWords.ts";
import { jumpTo } from "../../parts/JumpBar.tsx";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import type { SavedFile } from "../../parts/useSaving.ts";
import { goToStation } from "../../state/address.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWaitingFor } from "../../state/useWaitingFor.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { addReadings } from "./addReadings.ts";
import { GaugeWays } from "./GaugeWays.tsx";
import { LineList } from "./LineList.tsx";
import { PlumbCard } from "./PlumbCard.tsx";
import { PrintWorksheet } from "./PrintWorksheet.tsx";
import { ReadingCard, type ReadingCardProps } from "./ReadingCard.tsx";
import { ReadingsTold } from "./ReadingsTold.tsx";
import { StickCard } from "./StickCard.tsx";
import { WorksheetSwitch } from "./WorksheetSwitch.tsx";
import { goToLine, nextLine, seeCard, shownLine, useWorksheetView, worksheetView } from "./worksheetView.ts";

export type WorksheetPanelProps = {
  /** Ways to the answers, once there are some. */
  jumps: ReactNode;
};

/** The worksheet: a card for the reading at hand, how far it is, and all of them in a list. */
export function WorksheetPanel({ jumps }: WorksheetPanelProps) {
  const document = useWorkbench(shownDocument);
  const states = useMemo(() => worksheetOf(document), [document]);
  const at = useWorksheetView((s) => s.at);
  const index = shownLine(states, at);
  const state = states[index];
  // What is typed into the first that is not read must not turn the page under the hand that types it; come back to, it is
  // seen with all its keys.
  useEffect(() => {
    if (at !== null || !state) return;
    worksheetView.setState({ at: keyText(state.path) });
    if (window.document.querySelector(".pad")?.checkVisibility()) seeCard();
  }, [at, state]);
  const progress = useMemo(() => progressOf(document), [document]);
  const isWaiting = useWaitingFor() !== null;
  const missing = useMemo(() => readingsToAdd(document, true), [document]);
  // Two of them are fields, which come into the list with the others.
  const unlisted = WORKSHEET_LINES.filter((line) => !states.some((state) => state.line === line)).length;
  const from = useWorksheetView((s) => s.from);
  const backTo = states.findIndex(({ path }) => keyText(path) === from);
  const nameOf = (at: number) => readingName(states, at);
  const next = nextLine(states, index, "next");
  // After the last of a form the answer comes before what was skipped, once there is one.
  const isEnd = next === index ? state?.isRead === true : next < index && !isWaiting;
  // Enter on the last reading leads to the way on, where there is an answer to go to.
  const [isLastEntered, setLastEntered] = useState(false);
  useEffect(() => {
    if (!isLastEntered) return;
    setLastEntered(false);
    if (!isEnd || isWaiting) return;
    const on = window.document.querySelector<HTMLElement>(".reading-next");
    on?.focus({ preventScroll: true });
    on?.scrollIntoView({ block: "center" });
  }, [isLastEntered, isEnd, isWaiting]);
  return (
    <section data-board-undo="" className="setup worksheet" aria-labelledby="worksheet-title">
      <header className="setup-head">
        <h2 id="worksheet-title" className="label">
          Worksheet
        </h2>
        <WorksheetSwitch />
        <p className="worksheet-progress" role="status">
          {isWaiting && (
            <progress
              max={Math.max(progress.needed, progress.missing + progress.read)}
              value={progress.read}
              aria-hidden="true"
            />
          )}
          {progressWords(progress, isWaiting)}
        </p>
      </header>
      {state && (
        <Card
          key={keyText(state.path)}
          state={state}
          index={index}
          count={states.length}
          nameOf={nameOf}
          isEnd={isEnd}
          backTo={backTo}
          onGo={(way) => {
            if (way === "previous") goToLine(states[nextLine(states, index, way)]!.path);
            else if (backTo >= 0) goToLine(states[backTo]!.path);
            else if (way === "next" && isEnd) {
              goToStation("clear");
              window.scrollTo(0, 0);
            } else if (isEnd || next === index) setLastEntered(true);
            else goToLine(states[next]!.path);
          }}
          onAgain={state.ask === null ? null : () => readAgain(state)}
        />
      )}
      {!isWaiting && (
        <p className="worksheet-on">
          {ON_FROM_HERE.map(([name, selector]) => (
            <button
              key={name}
              type="button"
              className="link-button"
              onClick={() => jumpTo("choose", selector)}
            >
              {name}
            </button>
          ))}
        </p>
      )}
      {!isWaiting && jumps}
      <ReadingsTold states={states} nameOf={nameOf} />
      <LineList states={states} shown={index} left={backTo >= 0 ? backTo : index} />
      <GaugeWays />
      <div className="worksheet-tools">
        {missing.length > 0 && (
          <button type="button" className="button" onClick={() => addReadings(missing)}>
            Show the full list: {unlisted} more reading{unlisted === 1 ? "" : "s"}
          </button>
        )}
        <SaveMenu of="what the readings come to" files={[measuredFile()]} />
        <PrintWorksheet states={states} name={String(valueAt(document, ["name"]) ?? "")} />
      </div>
    </section>
  );
}

/** What the readings come to, as the command line prints it. */
export function measuredFile(): SavedFile {
  const { file, document, variant } = workbench.getState();
  const name = String(valueAt(document, ["name"]) ?? DEFAULT_NAME);
  return {
    name: "Points, residuals, what is left open (JSON)",
    file: `${fileStem({ name, variant, variantNames: variantNames(document) }, file)}-measure.json`,
    type: "application/json",
    make: () => {
      const text = measureText(document, variant);
      if (text === null) throw new Error(NOTHING_READ);
      return text;
    },
  };
}

/** What is asked once there is an answer, and where it stands at Choose. */
const ON_FROM_HERE = [
  ["How likely is it?", "[data-fold='odds'] > summary"],
  ["What to change?", "[data-fold='change'] > summary"],
] as const;

/** The card of a line by what is read of it. */
function Card(props: ReadingCardProps) {
  switch (props.state.gauge) {
    case "stick":
      return <StickCard {...props} />;
    case "plumb":
      return <PlumbCard {...props} />;
    case null:
      return <ReadingCard {...props} />;
  }
}

/** Asks for the same once more, right after what was read. */
function readAgain({ ask, path }: LineState): void {
  const index = Number(path[1]) + 1;
  workbench.getState().insertItem(["readings"], index, ask);
  goToLine(["readings", index, "is"]);
}
