import { useId } from "react";
import { setStage, useStage } from "../../state/stageSettings.ts";
import { handleStore } from "./handleStore.ts";
import { useKnuckleHandles } from "./useKnuckleHandles.ts";

/** Below the knuckle's picture while its dimensions can be dragged: which one, what it is, and how. */
export function KnuckleHandleStrip() {
  const isOn = useStage((s) => s.hasHandles);
  return isOn ? <StripFields /> : null;
}

function StripFields() {
  const id = useId();
  const { handles, current } = useKnuckleHandles();
  return (
    <div className="stage-strip">
      {current ? (
        <>
          <label htmlFor={id}>Dimension</label>
          <select
            id={id}
            className="handle-choice"
            value={current.key}
            onChange={(event) => handleStore.setState({ current: event.target.value })}
          >
            {handles.map(({ key, name }) => (
              <option key={key} value={key}>
                {name}
              </option>
            ))}
          </select>
          <output htmlFor={id} className="strip-value">
            {current.value}
          </output>
        </>
      ) : (
        <p className="strip-note">This knuckle does not go on its truck.</p>
      )}
      <button type="button" className="stage-tool" onClick={() => setStage({ hasHandles: false })}>
        Done
      </button>
      <p className="strip-note">
        Drag its mark<span className="handle-keys">, or arrow keys; Page Down: the next one</span>. It changes
        the setup; undo takes it back.
      </p>
    </div>
  );
}
