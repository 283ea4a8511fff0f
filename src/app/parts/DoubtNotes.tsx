import "./doubtNotes.css";
import type { KeyPath } from "../../setup/types/keyPath.ts";
import type { Doubt } from "../../studies/doubts/doubt.ts";
import { workbench } from "../state/workbench.ts";
import { keepTogether } from "../words/keyWords.ts";
import { goOnFrom } from "./focusOn.ts";
import { StateMark } from "./StateMark.tsx";

export type DoubtNotesProps = {
  doubts: readonly Doubt[];
  /** With a button each to say that an unusual value is so; default false. */
  canConfirm?: boolean;
  /** Goes to the field of an unusual value, where that is not beside it. */
  goToField?: (path: KeyPath) => void;
};

/** What is in doubt, beside an answer or a field: each with its mark. */
export function DoubtNotes({ doubts, canConfirm = false, goToField }: DoubtNotesProps) {
  if (doubts.length === 0) return null;
  return (
    <ul className="doubts" aria-label="To be looked at again">
      {doubts.map((doubt) => (
        <li key={`${doubt.kind} ${doubt.path.join(".")} ${doubt.text}`}>
          <p>
            <StateMark word={doubt.kind} /> {keepTogether(doubt.text)}
          </p>
          {goToField && doubt.kind === "unusual" && (
            <button
              type="button"
              className="small-button"
              onClick={() => goToField(doubt.readings[0] ?? doubt.path)}
            >
              {doubt.readings.length > 0 ? "Show its readings" : "Show its field"}
            </button>
          )}
          {canConfirm && doubt.kind === "unusual" && (
            <button
              type="button"
              className="small-button"
              title="Kept in the setup for this value alone; undo takes it back"
              onClick={(event) => {
                goOnFrom(event);
                workbench.getState().insertItem(["confirmed"], Number.POSITIVE_INFINITY, doubt.confirm);
              }}
            >
              It is right
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}
