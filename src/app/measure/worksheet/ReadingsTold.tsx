import { valueAt } from "../../../setup/types/keyPath.ts";
import { isOnAssumedLayout } from "../../../setup/worksheet/assumedLayout.ts";
import type { ReadingAsk } from "../../../setup/worksheet/worksheetLines.ts";
import { askOf, type LineState } from "../../../setup/worksheet/worksheetState.ts";
import type { Measured } from "../../../studies/measure/measured.ts";
import { stillAssumed } from "../../../studies/wording/assumedWords.ts";
import {
  agreeSentence,
  cannotBe,
  faultWords,
  leftOutNote,
  nextSentence,
  noTruckSentence,
  readingText,
  residualWords,
  STATION_NAME,
  suspectSentence,
} from "../../../studies/wording/readingsTold.ts";
import { askName, lineWords } from "../../../studies/wording/worksheetWords.ts";
import { lineFrom } from "../../../studies/worksheet/candidates.ts";
import { STATION } from "../../../studies/worksheet/worksheetAskOf.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { lengthFormat, shownDocument } from "../../state/selectors.ts";
import { useWaitingFor } from "../../state/useWaitingFor.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keyWords } from "../../words/keyWords.ts";
import { EllipsesOnStage } from "./EllipsesOnStage.tsx";
import { useContradicting } from "./useContradicting.ts";
import { useImpossible } from "./useImpossible.ts";
import { useMeasured } from "./useMeasured.ts";
import { goToLine, openLine } from "./worksheetView.ts";

export type ReadingsToldProps = {
  states: readonly LineState[];
  /** What a reading is called, by its place in the file. */
  nameOf: (at: number) => string;
};

/** What the readings say: the one most likely wrong, what would help most next, each beside the others, what is assumed. */
export function ReadingsTold({ states, nameOf }: ReadingsToldProps) {
  const found = useMeasured();
  const format = useWorkbench(lengthFormat);
  if (found === null) return null;
  const measured = {
    ...found,
    residuals: found.residuals.filter(({ reading }) => reading.index !== STATION),
  };
  const name = (index: number) => (index === STATION ? STATION_NAME : nameOf(index));
  return (
    <section className="readings-told" aria-label="What the readings say">
      <EllipsesOnStage measured={found} />
      <NoTruck name={name} />
      <SuspectNote
        measured={measured}
        known={states.filter(({ isRead }) => isRead).map((state) => lineWords(state).name)}
        name={name}
        format={format}
      />
      <CannotBe name={name} />
      <LeftOut name={name} />
      <NextNote measured={measured} states={states} format={format} />
      <AssumedNote />
      <ResidualTable measured={measured} name={name} format={format} />
    </section>
  );
}

type PartProps = { measured: Measured; name: (index: number) => string; format: LengthFormat };

function SuspectNote({
  measured: { suspect, residuals },
  known,
  name,
  format,
}: PartProps & { known: readonly string[] }) {
  if (suspect === null) return <p>{agreeSentence(residuals, known)}</p>;
  const { index } = suspect.reading;
  return (
    <div className="suspect" role="status">
      <p>
        <StateMark word="unusual" /> {suspectSentence(suspect, name, format)}
      </p>
      <div className="row-tools">
        {index !== STATION && (
          <>
            <button type="button" className="button" onClick={() => openLine(["readings", index, "is"])}>
              Show it
            </button>
            <button type="button" className="button" onClick={() => setLeftOut(index, true)}>
              Try without it
            </button>
          </>
        )}
      </div>
    </div>
  );
}

/** Readings that put the truck where it does not go together: which are in the way, each with a way to mend it. */
function NoTruck({ name }: { name: (index: number) => string }) {
  const found = useContradicting();
  const document = useWorkbench(shownDocument);
  if (found === null) return null;
  const { issue, inTheWay } = found;
  return (
    <div className="suspect" role="status">
      <p>
        <span aria-hidden="true">✕ </span>
        {noTruckSentence(keyWords(faultWords(issue, document)), inTheWay.map(name))}
      </p>
      <div className="row-tools">
        {inTheWay.map((index) => (
          <button
            key={index}
            type="button"
            className="button"
            onClick={() => openLine(["readings", index, "is"])}
          >
            {inTheWay.length === 1 ? "Show it" : `Show ${name(index)}`}
          </button>
        ))}
        {inTheWay.length === 1 && (
          <button type="button" className="button" onClick={() => setLeftOut(inTheWay[0]!, true)}>
            Try without it
          </button>
        )}
      </div>
    </div>
  );
}

/** Readings that no truck can have, alone or with the others: they are left out until they are mended. */
function CannotBe({ name }: { name: (index: number) => string }) {
  const leftOut = useImpossible();
  return leftOut.map(({ at, mend }) => (
    <div key={at} className="suspect" role="status">
      <p>
        <span aria-hidden="true">✕ </span>
        {leftOutNote(name(at), cannotBe(mend, name))}
      </p>
      <div className="row-tools">
        <button type="button" className="button" onClick={() => openLine(["readings", at, "is"])}>
          Show it
        </button>
      </div>
    </div>
  ));
}

/** Readings kept out on trial, each with the way back. */
function LeftOut({ name }: { name: (index: number) => string }) {
  const readings = useWorkbench((s) => valueAt(shownDocument(s), ["readings"]));
  const out = (Array.isArray(readings) ? readings : []).flatMap((reading, index) =>
    valueAt(reading, ["leftOut"]) === true ? [index] : [],
  );
  return out.map((index) => (
    <div key={index} className="left-out">
      <p>Tried without: {name(index)}. What follows is without it.</p>
      <button type="button" className="button" onClick={() => setLeftOut(index, false)}>
        Put it back
      </button>
    </div>
  ));
}

function setLeftOut(index: number, isOut: boolean): void {
  const path = ["readings", index, "leftOut"];
  workbench.getState().applySuggestion({ path, value: isOut ? true : undefined, kind: "before" });
}

function NextNote({
  measured: { next },
  states,
  format,
}: {
  measured: Measured;
  states: readonly LineState[];
  format: LengthFormat;
}) {
  const ask = next && lineFrom(next.ask);
  const isWaiting = useWaitingFor() !== null;
  const isOnLayout = isOnAssumedLayout(useWorkbench(shownDocument));
  if (!next || !ask) return null;
  const listed = states.find((state) => state.ask && isSameAsk(state.ask, ask));
  // Until there is a first verdict the list itself says what comes next.
  if (isWaiting && !listed) return null;
  const sentence = nextSentence(next, listed ? lineWords(listed).name : askName(ask), format, isOnLayout);
  if (sentence === "") return null;
  return (
    <div className="next-reading">
      <p>{sentence}</p>
      <button type="button" className="button" onClick={() => readNext(ask, listed)}>
        Read it next
      </button>
    </div>
  );
}

function isSameAsk(a: ReadingAsk, b: ReadingAsk): boolean {
  return JSON.stringify(askOf(a)) === JSON.stringify(askOf(b));
}

function readNext(ask: ReadingAsk, listed: LineState | undefined): void {
  if (listed) {
    goToLine(listed.path);
    return;
  }
  const { document, insertItem } = workbench.getState();
  const list = valueAt(document, ["readings"]);
  const at = Array.isArray(list) ? list.length : 0;
  insertItem(["readings"], at, ask);
  goToLine(["readings", at, "is"]);
}

function AssumedNote() {
  const document = useWorkbench(shownDocument);
  const fields = useWorkbench((s) => s.truck?.setup.fromExample?.fields ?? null);
  if (fields === null) return null;
  return <p className="still-assumed">{stillAssumed(fields, document)}</p>;
}

/** Those that others check: of one that none checks there is nothing to tell. */
function ResidualTable({ measured, name, format }: PartProps) {
  const residuals = measured.residuals.filter(({ inSigmas }) => inSigmas !== null);
  if (residuals.length === 0) return null;
  return (
    <table className="residual-table">
      <caption>Each reading that others check, beside what all of them give</caption>
      <thead>
        <tr>
          <th scope="col">Reading</th>
          <th scope="col">Read</th>
          <th scope="col">Off</th>
        </tr>
      </thead>
      <tbody>
        {residuals.map((residual) => {
          const { reading } = residual;
          const { off, stands } = residualWords(residual, format);
          return (
            <tr key={reading.index}>
              <th scope="row">{name(reading.index)}</th>
              <td>{"is" in reading ? readingText(reading, reading.is, format) : ""}</td>
              <td>
                {off}
                <small>{stands}</small>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
