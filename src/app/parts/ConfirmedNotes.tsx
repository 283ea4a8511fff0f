import "./doubtNotes.css";
import "./cautions.css";
import { confirmedNotes } from "../../studies/wording/unusualReport.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";
import { workbench } from "../state/workbench.ts";
import { goOnFrom } from "./focusOn.ts";

export type ConfirmedNotesProps = { truck: Truck };

/** Unusual values that somebody said are so, each to be taken back. */
export function ConfirmedNotes({ truck }: ConfirmedNotesProps) {
  // Each is taken back by where it stands in the list: of the truck on the board, not of one a step behind.
  const board = useWorkbench((s) => s.truck) ?? truck;
  const notes = confirmedNotes(board.bolted, useFormat());
  if (notes.length === 0) return null;
  return (
    <ul className="confirmed" aria-label="Unusual, and confirmed">
      {notes.map(({ text, entry }) => (
        <li key={text}>
          {text}
          <button
            type="button"
            className="small-button"
            onClick={(event) => {
              goOnFrom(event);
              workbench.getState().removeItem(["confirmed"], entry);
            }}
          >
            Take back
          </button>
        </li>
      ))}
    </ul>
  );
}

/** What a result here does not say. */
export function Cautions() {
  return (
    <footer className="cautions">
      <p>
        <strong>Measure before you trust it.</strong> Every number here is as good as the measurements in the
        setup; rubber flexes, bushings give, and bodies differ side to side. A check that clears does not say
        that a part, a truck or a way of driving is safe. Knuckles and steering parts must be built and
        inspected by qualified people, and must meet the codes where the truck is driven.
      </p>
    </footer>
  );
}
