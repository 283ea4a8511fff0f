import { Fragment } from "react";
import { keyText } from "../../../setup/types/keyPath.ts";
import type { LineState } from "../../../setup/worksheet/worksheetState.ts";
import { lineWords, worksheetPlaceWords } from "../../../studies/wording/worksheetWords.ts";
import { useField } from "../../state/documentUse.ts";
import { useContradicting } from "./useContradicting.ts";
import { useImpossible } from "./useImpossible.ts";
import { comesBack, goToLine } from "./worksheetView.ts";

export type LineListProps = {
  states: readonly LineState[];
  /** Position of the line whose card is open. */
  shown: number;
  /** Position of the line that was left for one read before; that of the line shown where none was. */
  left: number;
};

/** All lines of the worksheet with what was read, each a way to its card. */
export function LineList({ states, shown, left }: LineListProps) {
  const inTheWay = useContradicting()?.inTheWay ?? NONE;
  return (
    <ol className="line-list" aria-label="All readings">
      {states.map((state, i) => {
        const place = state.line?.place ?? null;
        const isFirst = i === 0 || (states[i - 1]!.line?.place ?? null) !== place;
        return (
          <Fragment key={keyText(state.path)}>
            {isFirst && (
              <li className="line-place">{place === null ? "Also read" : worksheetPlaceWords(place)}</li>
            )}
            <li>
              <Line
                state={state}
                isShown={i === shown}
                isInTheWay={state.path[0] === "readings" && inTheWay.some((at) => at === state.path[1])}
                from={comesBack(states, i, left)}
              />
            </li>
          </Fragment>
        );
      })}
    </ol>
  );
}

const NONE: readonly number[] = [];

/** `isInTheWay`: without it the others would make a truck together. */
type LineProps = { state: LineState; isShown: boolean; isInTheWay: boolean; from: string | null };

function Line({ state, isShown, isInTheWay, from }: LineProps) {
  const { path, isRead } = state;
  const { text, draft, issue } = useField(path);
  const isOut = useImpossible().some(({ at }) => path[0] === "readings" && at === path[1]);
  const isWrong = draft !== null || isOut || isInTheWay || (isRead && issue !== null);
  const value = state.gauge !== null ? (isRead ? "read" : "") : (draft?.text ?? (isRead ? text : ""));
  return (
    <button
      type="button"
      className="line"
      aria-current={isShown ? "step" : undefined}
      onClick={() => goToLine(path, from)}
    >
      <span className="line-mark" aria-hidden="true">
        {isWrong ? "✕" : isRead ? "✓" : "·"}
      </span>
      <span className="line-name">{lineWords(state).name}</span>
      <span className="line-value" data-wrong={isWrong || undefined}>
        {value === "" ? "not read" : value}
        {isWrong && <span className="sr-only">, to fix</span>}
      </span>
    </button>
  );
}
