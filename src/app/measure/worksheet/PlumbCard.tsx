import { useId, useMemo } from "react";
import { valueAt } from "../../../setup/types/keyPath.ts";
import type { LineState } from "../../../setup/worksheet/worksheetState.ts";
import { markName } from "../../../studies/wording/gaugeWords.ts";
import { lineWords, pointWord, worksheetPlaceWords } from "../../../studies/wording/worksheetWords.ts";
import { markTapes, plumbPoints } from "../../../studies/worksheet/gaugeReadings.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { addReadings } from "./addReadings.ts";
import { CardFrame } from "./CardFrame.tsx";
import { PlumbSketch } from "./LineSketch.tsx";
import { RemoveReading } from "./RemoveReading.tsx";

export type PlumbCardProps = {
  state: LineState;
  index: number;
  count: number;
  isEnd: boolean;
  /** Where the way on leads back to, as `index`; below 0 = to the next. */
  backTo: number;
  onGo: (way: "next" | "previous") => void;
};

/** A plumb bob let down from a point to its mark on the floor; tapes go from mark to mark. */
export function PlumbCard({ state, index, count, isEnd, backTo, onGo }: PlumbCardProps) {
  const id = useId();
  const { path } = state;
  const { name, how } = lineWords(state);
  const document = useWorkbench(shownDocument);
  const point = String(valueAt(document, [...path, "plumb"]) ?? "");
  const mark = String(valueAt(document, [...path, "mark"]) ?? "");
  const points = useMemo(() => plumbPoints(document), [document]);
  const tapes = useMemo(() => markTapes(document, mark), [document, mark]);
  return (
    <CardFrame
      nameId={`${id}-name`}
      place={worksheetPlaceWords("under")}
      index={index}
      count={count}
      isEnd={isEnd}
      backTo={backTo}
      isFilled
      onGo={onGo}
      foot={<RemoveReading path={path} />}
    >
      <PlumbSketch point={point} mark={markName(mark)} name={name} />
      <h3 id={`${id}-name`} className="reading-name">
        {name} to {markName(mark)}
      </h3>
      <p className="reading-how">{how}</p>
      <p className="plumb-from">
        <label htmlFor={id}>Let down from</label>
        <select
          id={id}
          className="field-choice"
          value={point}
          onChange={({ target }) => workbench.getState().editField([...path, "plumb"], target.value)}
        >
          {(points.includes(point) ? points : [point, ...points]).map((one) => (
            <option key={one} value={one}>
              {pointWord(one)}
            </option>
          ))}
        </select>
      </p>
      {tapes.length > 0 && (
        <button type="button" className="button" onClick={() => addReadings(tapes)}>
          Add tapes to the other marks: {tapes.length}
        </button>
      )}
    </CardFrame>
  );
}
