import { useId } from "react";
import { valueAt } from "../../../setup/types/keyPath.ts";
import type { LineState } from "../../../setup/worksheet/worksheetState.ts";
import { STATION_COLUMNS, STICK_WORDS, stationName } from "../../../studies/wording/gaugeWords.ts";
import { lineWords, worksheetPlaceWords } from "../../../studies/wording/worksheetWords.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { FieldRow } from "../fields/FieldRow.tsx";
import { CoordinateTable } from "../points/CoordinateTable.tsx";
import { CardFrame } from "./CardFrame.tsx";
import { StickSketch } from "./LineSketch.tsx";
import { RemoveReading } from "./RemoveReading.tsx";

export type StickCardProps = {
  state: LineState;
  index: number;
  count: number;
  isEnd: boolean;
  /** Where the way on leads back to, as `index`; below 0 = to the next. */
  backTo: number;
  onGo: (way: "next" | "previous") => void;
};

/** A fender lip read at stations along a level stick: where the stick lies, and a row a station. */
export function StickCard({ state, index, count, isEnd, backTo, onGo }: StickCardProps) {
  const id = useId();
  const { path, isRead } = state;
  const { name, how } = lineWords(state);
  const stations = useWorkbench((s) => {
    const list = valueAt(shownDocument(s), [...path, "stations"]);
    return Array.isArray(list) ? list.length : 0;
  });
  return (
    <CardFrame
      nameId={id}
      place={worksheetPlaceWords("outside")}
      index={index}
      count={count}
      isEnd={isEnd}
      backTo={backTo}
      isFilled={isRead}
      onGo={onGo}
      foot={<RemoveReading path={path} />}
    >
      <StickSketch name={name} />
      <h3 id={id} className="reading-name">
        {name}
      </h3>
      <p className="reading-how">{how}</p>
      <FieldRow path={[...path, "stick", "offset"]} label={STICK_WORDS.offset} placeholder="not read yet" />
      <FieldRow path={[...path, "stick", "height"]} label={STICK_WORDS.height} placeholder="not read yet" />
      <CoordinateTable
        caption={name}
        rowHead="station"
        columns={STATION_COLUMNS}
        rows={Array.from({ length: stations }, (_, i) => ({
          label: stationName(i, stations),
          path: [...path, "stations", i],
        }))}
      />
    </CardFrame>
  );
}
