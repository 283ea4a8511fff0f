import { keyText, valueAt } from "../../../setup/types/keyPath.ts";
import type { LineState } from "../../../setup/worksheet/worksheetState.ts";
import { markName, STATION_COLUMNS, STICK_WORDS, stationName } from "../../../studies/wording/gaugeWords.ts";
import { FORM_NOTES } from "../../../studies/wording/worksheetNotes.ts";
import { lineWords, pointWord, worksheetPlaceWords } from "../../../studies/wording/worksheetWords.ts";
import { ColumnHeads } from "../../parts/ScrollTable.tsx";
import { useField } from "../../state/documentUse.ts";
import { shownDocument } from "../../state/selectors.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { LineSketch, PlumbSketch, StickSketch } from "./LineSketch.tsx";

export type WorksheetFormProps = {
  states: readonly LineState[];
  name: string;
  isBlank: boolean;
};

/** Boxes of the first page, under its head, and of each that follows: three a line, Letter and A4. */
const FIRST = 9;
const WHOLE = 12;

/**
 * The worksheet on paper: a box a reading, with its sketch, how it is taken and a line to write on. Whole pages: what is left
 * of the last one is boxes for whatever else is read.
 */
export function WorksheetForm({ states, name, isBlank }: WorksheetFormProps) {
  const units = useWorkbench((s) => fileUnitsOf(s.document));
  const boxes = states.filter(({ gauge }) => gauge !== "stick");
  const pages = pagesOf(boxes.length);
  return (
    <div className="printed-worksheet">
      {pages.map(([from, to], page) => (
        <section key={from} className="form-page">
          {page === 0 && (
            <>
              <header className="form-head">
                <h1>Measuring worksheet: {name}</h1>
                <p>
                  Date <span className="form-line" /> Read by <span className="form-line" />{" "}
                  {units === "in" ? "inches, to 1/16" : "millimeters"}
                </p>
              </header>
              <ul className="form-notes">
                {FORM_NOTES.map((note) => (
                  <li key={note}>{note}</li>
                ))}
              </ul>
            </>
          )}
          <div className="form-boxes">
            {Array.from({ length: to - from }, (_, i) => {
              const at = from + i;
              const state = boxes[at];
              if (!state) return <OtherBox key={at} number={at + 1} />;
              const key = keyText(state.path);
              return state.gauge === "plumb" ? (
                <PlumbBox key={key} state={state} number={at + 1} />
              ) : (
                <Box key={key} state={state} number={at + 1} isBlank={isBlank} />
              );
            })}
          </div>
        </section>
      ))}
      {states
        .filter(({ gauge }) => gauge === "stick")
        .map((state) => (
          <StickBox key={keyText(state.path)} state={state} isBlank={isBlank} />
        ))}
    </div>
  );
}

/** From which box to which each page goes. */
function pagesOf(count: number): readonly (readonly [number, number])[] {
  const pages: [number, number][] = [[0, FIRST]];
  while (pages.at(-1)![1] < count) {
    const from = pages.at(-1)![1];
    pages.push([from, from + WHOLE]);
  }
  return pages;
}

function Box({ state, number, isBlank }: { state: LineState; number: number; isBlank: boolean }) {
  const { line, ask, path, isRead } = state;
  const { text } = useField(path);
  const { name, how } = lineWords(state);
  return (
    <article className="form-box">
      <p className="form-place">{line ? worksheetPlaceWords(line.place) : "Also read"}</p>
      <LineSketch ask={ask} pattern={path.map(String)} name={name} />
      <h2>
        {number}. {name}
      </h2>
      <p>{how}</p>
      <p className="form-read">
        <span className="form-line">{!isBlank && isRead ? text : ""}</span> again{" "}
        <span className="form-line form-short" />
      </p>
    </article>
  );
}

/** A plumb bob's mark: nothing is read there but where the mark is. */
function PlumbBox({ state, number }: { state: LineState; number: number }) {
  const { name, how } = lineWords(state);
  const reading = useWorkbench((s) => valueAt(shownDocument(s), state.path));
  const from = pointWord(String(valueAt(reading, ["plumb"]) ?? ""));
  const mark = markName(String(valueAt(reading, ["mark"]) ?? ""));
  return (
    <article className="form-box">
      <p className="form-place">{worksheetPlaceWords("under")}</p>
      <PlumbSketch point={String(valueAt(reading, ["plumb"]) ?? "")} mark={mark} name={name} />
      <h2>
        {number}. {name} from {from} to {mark}
      </h2>
      <p>{how}</p>
      <p className="form-read">☐ {mark} is on the floor</p>
    </article>
  );
}

/** A box for a reading that the list does not have. */
function OtherBox({ number }: { number: number }) {
  return (
    <article className="form-box">
      <p className="form-place">Also read: draw both ends of the tape</p>
      <p className="form-read">
        {number}. from <span className="form-line form-wide" />
      </p>
      <p>
        to <span className="form-line form-wide" />
      </p>
      <p className="form-read form-number">
        <span className="form-line" /> again <span className="form-line form-short" />
      </p>
    </article>
  );
}

/** A lip along a stick: where it lies, and a line a station. */
function StickBox({ state, isBlank }: { state: LineState; isBlank: boolean }) {
  const { name, how } = lineWords(state);
  const reading = useWorkbench((s) => valueAt(shownDocument(s), state.path));
  const typed = (...path: (string | number)[]) => String(valueAt(reading, path) ?? "");
  const list = valueAt(reading, ["stations"]);
  const stations: readonly unknown[] = Array.isArray(list) ? list : [];
  return (
    <article className="form-box form-stick">
      <StickSketch name={name} />
      <h2>{name}</h2>
      <p>{how}</p>
      {(["offset", "height"] as const).map((key) => (
        <p key={key} className="form-read">
          {STICK_WORDS[key]} <span className="form-line">{isBlank ? "" : typed("stick", key)}</span>
        </p>
      ))}
      <table>
        <thead>
          <tr>
            <th scope="col">station</th>
            <ColumnHeads of={STATION_COLUMNS} />
          </tr>
        </thead>
        <tbody>
          {stations.map((_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a station is its place along the stick
            <tr key={i}>
              <th scope="row">{stationName(i, stations.length)}</th>
              {STATION_COLUMNS.map((column, k) => (
                <td key={column}>{isBlank && k > 0 ? "" : typed("stations", i, k)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </article>
  );
}
