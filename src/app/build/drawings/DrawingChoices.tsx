import { useId, useState } from "react";
import { WIDEST_KERF } from "../../../studies/drawings/kerf.ts";
import type { DrawingAsk } from "../../../studies/drawings/shopDrawings.ts";
import { PAPER_NAMES, type PaperName } from "../../../studies/drawings/shopFile.ts";
import { kerfMend, paperWords, projectionWords } from "../../../studies/wording/drawingWords.ts";
import type { FileUnits } from "../../../units/lengthUnits.ts";
import { parseLength } from "../../../units/parseLength.ts";

export type DrawingChoicesProps = {
  /** Of bare lengths. */
  units: FileUnits;
  ask: DrawingAsk;
  onChange: (ask: DrawingAsk) => void;
};

const ANGLES = ["third", "first"] as const;

/** Paper, where the views of the drawing sheet lie, and the width of the cut that plates are drawn for. */
export function DrawingChoices({ units, ask, onChange }: DrawingChoicesProps) {
  return (
    <div className="drawing-choices">
      <label>
        Paper
        <select
          value={ask.paper}
          onChange={(event) => onChange({ ...ask, paper: event.target.value as PaperName })}
        >
          {PAPER_NAMES.map((name) => (
            <option key={name} value={name}>
              {paperWords(name)}
            </option>
          ))}
        </select>
      </label>
      <label>
        Views
        <select
          value={ask.angle}
          onChange={(event) => onChange({ ...ask, angle: event.target.value as DrawingAsk["angle"] })}
        >
          {ANGLES.map((angle) => (
            <option key={angle} value={angle}>
              {projectionWords(angle)}
            </option>
          ))}
        </select>
      </label>
      <KerfField units={units} onChange={(kerf) => onChange({ ...ask, kerf })} />
    </div>
  );
}

/** While what is typed is no kerf, the last one that was holds. */
function KerfField({ units, onChange }: { units: FileUnits; onChange: (kerf: number) => void }) {
  const id = useId();
  const [text, setText] = useState("0");
  const mend = mendOf(text, units);
  return (
    <label>
      Kerf
      <input
        type="text"
        inputMode="decimal"
        size={7}
        value={text}
        aria-invalid={mend !== null}
        aria-describedby={id}
        onChange={(event) => {
          const typed = event.target.value;
          setText(typed);
          const read = parseLength(typed, units);
          if (read.ok && mendOf(typed, units) === null) onChange(read.mm);
        }}
      />
      <span id={id} className={mend === null ? "drawing-kerf-unit" : "drawing-kerf-wrong"}>
        {mend === null ? `${units}, width of the cut of plates` : `✕ ${mend}`}
      </span>
    </label>
  );
}

function mendOf(text: string, units: FileUnits): string | null {
  const read = parseLength(text, units);
  if (!read.ok) return read.mend;
  return read.mm >= 0 && read.mm <= WIDEST_KERF ? null : kerfMend(WIDEST_KERF);
}
