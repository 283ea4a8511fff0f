import { keyText } from "../../../setup/types/keyPath.ts";
import type { LineState } from "../../../setup/worksheet/worksheetState.ts";
import { FORM_NOTES, lineWords, worksheetPlaceWords } from "../../../studies/wording/worksheetWords.ts";
import { useField } from "../../state/documentUse.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { LineSketch } from "./LineSketch.tsx";

export type WorksheetFormProps = {
  states: readonly LineState[];
  name: string;
  isBlank: boolean;
};

/** The worksheet on paper: a box a reading, with its sketch, how it is taken and a line to write on. */
export function WorksheetForm({ states, name, isBlank }: WorksheetFormProps) {
  const units = useWorkbench((s) => fileUnitsOf(s.document));
  return (
    <div className="printed-worksheet">
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
      <div className="form-boxes">
        {states.map((state, i) => (
          <Box key={keyText(state.path)} state={state} number={i + 1} isBlank={isBlank} />
        ))}
      </div>
    </div>
  );
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
