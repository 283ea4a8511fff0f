import { useId } from "react";
import { lengthStep } from "../../state/selectors.ts";
import { setStage, useStage } from "../../state/stageSettings.ts";
import { useFormat, useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import type { ViewName } from "../../state/workbenchState.ts";
import { coordinateText } from "./coordinateText.ts";
import { handleStore } from "./handleStore.ts";
import { useStagePoints } from "./stagePoints.ts";

const FLAT: readonly { readonly view: ViewName; readonly label: string }[] = [
  { view: "front", label: "Front" },
  { view: "side", label: "Side" },
  { view: "top", label: "Top" },
];

/** Below the picture while points can be moved in it: which one, where it is, and how. */
export function HandleStrip() {
  const isOn = useStage((s) => s.hasHandles);
  return isOn ? <StripFields /> : null;
}

function StripFields() {
  const id = useId();
  const { plane, points, current } = useStagePoints();
  const format = useFormat();
  const step = useWorkbench(lengthStep);
  const isMoved = useWorkbench((s) => s.travel !== 0 || s.steer !== 0);
  const { setView, setPose } = workbench.getState();
  const done = (
    <button type="button" className="stage-tool" onClick={() => setStage({ hasHandles: false })}>
      Done
    </button>
  );
  if (!plane)
    return (
      <div className="stage-strip">
        <p className="strip-note">Points are moved in a view along an axis:</p>
        {FLAT.map(({ view, label }) => (
          <button
            key={view}
            type="button"
            className="stage-tool"
            aria-label={`Points in the ${view} view`}
            onClick={() => setView(view)}
          >
            {label}
          </button>
        ))}
        {done}
      </div>
    );
  if (!current) return <div className="stage-strip">No point of this setup can be shown. {done}</div>;
  const by =
    step.units === "in" && step.size < 1 ? `1/${Math.round(1 / step.size)} in` : `${step.size} ${step.units}`;
  return (
    <div className="stage-strip">
      <label htmlFor={id}>Point</label>
      <select
        id={id}
        className="handle-choice"
        value={current.key}
        onChange={(event) => handleStore.setState({ current: event.target.value })}
      >
        {points.map(({ key, name }) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
      <output htmlFor={id} className="strip-value">
        {coordinateText(current, plane, format)}
      </output>
      {done}
      <p className="strip-note">
        Drag it<span className="handle-keys">, or arrow keys: {by}; Page Down: the next point</span>.
        {current.sort === "arm" && isMoved && " Arms are given as measured, at travel 0."}
      </p>
      {current.sort === "arm" && isMoved && (
        <button type="button" className="stage-tool" onClick={() => setPose(0, 0)}>
          Go to travel 0
        </button>
      )}
    </div>
  );
}
