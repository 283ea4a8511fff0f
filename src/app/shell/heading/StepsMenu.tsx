import { useState } from "react";
import { useStore } from "zustand";
import { goOnFrom } from "../../parts/focusOn.ts";
import { Menu } from "../../parts/Menu.tsx";
import { usePageMark } from "../../parts/usePageMark.ts";
import { dropPoint, keepPoint, keptPoints, pointsOf } from "../../state/keptPoints.ts";
import type { DocumentSlice } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { stepWords } from "../../words/stepWords.ts";

/** Steps listed each way; those further off are reached in two goes. */
const MOST_LISTED = 40;

/** What was done, by name, to go back to by one press; and points that were given a name. */
export function StepsMenu() {
  return (
    <Menu label="Steps by name" icon={<StepsIcon />} className="steps-menu">
      {(close) => (
        <>
          <NamedPoints />
          <Steps close={close} />
        </>
      )}
    </Menu>
  );
}

function StepsIcon() {
  return (
    <svg viewBox="0 0 20 20" aria-hidden="true">
      <path d="M7 4H17M7 10H17M7 16H17M2.5 4H3.5M2.5 10H3.5M2.5 16H3.5" />
    </svg>
  );
}

function NamedPoints() {
  usePageMark("steps", "open");
  const documentId = useWorkbench((s) => s.documentId);
  const points = useStore(keptPoints, () => pointsOf(documentId));
  const [name, setName] = useState("");
  const keep = () => {
    if (name.trim() === "") return;
    keepPoint(name.trim());
    setName("");
  };
  return (
    <>
      <form
        className="steps-name"
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <label>
          Name this state, to come back to it
          <input value={name} maxLength={80} onChange={(event) => setName(event.target.value)} />
        </label>
        <button type="submit" className="button" disabled={name.trim() === ""}>
          Keep
        </button>
      </form>
      {points.length > 0 && (
        <>
          <h2 className="label">States with a name</h2>
          <ul>
            {points.map((point) => (
              <li key={point.name}>
                <button
                  type="button"
                  className="menu-item"
                  onClick={() => workbench.getState().putDocument(point.document)}
                >
                  {point.name} <small>{new Date(point.at).toLocaleString()}</small>
                </button>
                <button
                  type="button"
                  className="menu-drop"
                  aria-label={`Forget ${point.name}`}
                  onClick={(event) => {
                    goOnFrom(event);
                    dropPoint(point.name);
                  }}
                >
                  ✕
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function Steps({ close }: { close: () => void }) {
  const past = useStore(workbench.temporal, (history) => history.pastStates);
  const future = useStore(workbench.temporal, (history) => history.futureStates);
  const now = useWorkbench((s) => s.document);
  const go = (count: number) => {
    workbench.getState().stepBy(count);
    if (count === 0) close();
  };
  if (now === null) return null;
  const current = workbench.getState();
  const undone = future.slice(-MOST_LISTED) as DocumentSlice[];
  const done = past.slice(-MOST_LISTED) as DocumentSlice[];
  return (
    <>
      <h2 className="label">Steps, the last one first</h2>
      <ol className="steps-list">
        {undone.map((slice, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place
          <li key={`undone ${i}`}>
            <button type="button" className="menu-item" onClick={() => go(undone.length - i)}>
              {stepWords(undone[i + 1] ?? current, slice)} <small>undone: press to do it again</small>
            </button>
          </li>
        ))}
        {done
          .map((slice, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place
            <li key={`done ${i}`}>
              <button
                type="button"
                className="menu-item"
                aria-current={i === done.length - 1}
                onClick={() => go(i + 1 - done.length)}
              >
                {stepWords(slice, done[i + 1] ?? current)}
                <small>{i === done.length - 1 ? "now" : "press to go back to here"}</small>
              </button>
            </li>
          ))
          .reverse()}
        <li>
          <button type="button" className="menu-item" onClick={() => go(-done.length)}>
            {past.length > done.length
              ? `${past.length - done.length} steps before these`
              : "As it was opened"}
            {done.length === 0 && <small>now</small>}
          </button>
        </li>
      </ol>
    </>
  );
}
