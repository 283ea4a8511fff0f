import { useRef } from "react";
import { useWorkbench } from "../state/useWorkbench.ts";
import { forgetRecent, reopenRecent } from "../storage/pageStorage.ts";
import { useStorage } from "../storage/useStorage.ts";
import { tell } from "./notice.ts";

/** Setups worked on before, kept in this browser. Draws nothing as long as there is only the one on the board. */
export function RecentSetups() {
  const recents = useStorage((s) => s.recents);
  const shownId = useWorkbench((s) => s.documentId);
  const details = useRef<HTMLDetailsElement>(null);
  const others = recents.filter(({ documentId }) => documentId !== shownId);
  if (others.length === 0) return null;
  const reopen = async (documentId: string) => {
    if (details.current) details.current.open = false;
    if (!(await reopenRecent(documentId))) tell("That setup could not be found in this browser any more.");
  };
  return (
    <details className="menu" ref={details}>
      <summary className="button">Recent</summary>
      <ul className="menu-sheet">
        {others.map(({ documentId, name, changedAt, summary }) => (
          <li key={documentId}>
            <button type="button" className="menu-item" onClick={() => void reopen(documentId)}>
              {name}{" "}
              <small>
                {new Date(changedAt).toLocaleString()}: {summary}
              </small>
            </button>
            <button
              type="button"
              className="menu-drop"
              aria-label={`Forget ${name}`}
              onClick={() => void forgetRecent(documentId)}
            >
              ✕
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
