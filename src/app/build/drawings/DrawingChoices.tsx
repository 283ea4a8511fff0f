import { PAPER_NAMES, type PaperName } from "../../../studies/drawings/paper.ts";
import type { DrawingAsk } from "../../../studies/drawings/shopDrawings.ts";
import { paperWords, projectionWords } from "../../../studies/wording/drawingWords.ts";

export type DrawingChoicesProps = {
  ask: DrawingAsk;
  onChange: (ask: DrawingAsk) => void;
};

const ANGLES = ["third", "first"] as const;

/** Paper, and where the views of the drawing sheet lie. */
export function DrawingChoices({ ask, onChange }: DrawingChoicesProps) {
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
    </div>
  );
}
