import "./doubtNotes.css";
import type { Doubt } from "../../studies/doubts/doubt.ts";
import { workbench } from "../state/workbench.ts";
import { keepTogether } from "../words/keepTogether.ts";
import { StateMark } from "./StateMark.tsx";

export type DoubtNotesProps = {
  doubts: readonly Doubt[];
  /** With a button each to say that an unusual value is so; default false. */
  canConfirm?: boolean;
};

/** What is in doubt, beside an answer or a field: each with its mark. */
export function DoubtNotes({ doubts, canConfirm = false }: DoubtNotesProps) {
  if (doubts.length === 0) return null;
  return (
    <ul className="doubts" aria-label="To be looked at again">
      {doubts.map((doubt) => (
        <li key={`${doubt.kind} ${doubt.path.join(".")} ${doubt.text}`}>
          <p>
            <StateMark word={doubt.kind} /> {keepTogether(doubt.text)}
          </p>
          {canConfirm && doubt.kind === "unusual" && (
            <button
              type="button"
              className="small-button"
              title="Kept in the setup for this value alone; undo takes it back"
              onClick={() =>
                workbench.getState().insertItem(["confirmed"], Number.POSITIVE_INFINITY, doubt.confirm)
              }
            >
              It is so
            </button>
          )}
        </li>
      ))}
    </ul>
  );
}
