import { type MouseEvent, type ReactNode, useMemo } from "react";
import { progressOf } from "../../../setup/worksheet/worksheetState.ts";
import { useCanUndo } from "../../state/documentUse.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { useSwipe } from "./useSwipe.ts";

export type CardFrameProps = {
  /** Of what names the card. */
  nameId: string;
  /** Where somebody is when it is read. */
  place: string;
  /** Its place in the list, from 0, and how many there are. */
  index: number;
  count: number;
  /** The last line, and there is an answer: the way on leads to it. */
  isEnd: boolean;
  /** Where the way on leads back to, as `index`; below 0 = to the next. */
  backTo: number;
  /** Something stands in it: the way on is no skipping. */
  isFilled: boolean;
  onGo: (way: "next" | "previous") => void;
  children: ReactNode;
  /** Under the ways on. */
  foot?: ReactNode;
};

/** The card of a line of the worksheet: where it is in the list, what it asks for, and the ways to the next and back. */
export function CardFrame(props: CardFrameProps) {
  const { nameId, place, index, count, isEnd, backTo, isFilled, onGo, children, foot } = props;
  const swipe = useSwipe(onGo);
  const canUndo = useCanUndo();
  const document = useWorkbench(shownDocument);
  const read = useMemo(() => progressOf(document).read, [document]);
  return (
    <article className="reading-card" aria-labelledby={nameId} {...swipe}>
      <p className="reading-place">
        <span>{place}</span>
        <span>
          {index + 1} of {count}
          {/* What tells it over the card has scrolled away there. */}
          <span className="reading-count"> · {read} read</span>
        </span>
      </p>
      {children}
      <div className="reading-go">
        <button
          type="button"
          className="button"
          disabled={index === 0}
          onMouseDown={keepFocus}
          onClick={() => onGo("previous")}
        >
          ‹ Back
        </button>
        {/* The head, with the other one, has scrolled away. */}
        <button
          type="button"
          className="button"
          aria-label="Undo the last step"
          disabled={!canUndo}
          onMouseDown={keepFocus}
          onClick={() => workbench.getState().undo()}
        >
          Undo
        </button>
        <button
          type="button"
          className="button reading-next"
          onMouseDown={keepFocus}
          onClick={() => onGo("next")}
        >
          {backTo >= 0 ? `On to ${backTo + 1} ›` : isEnd ? "To the answer ›" : isFilled ? "Next ›" : "Skip ›"}
        </button>
      </div>
      {foot}
    </article>
  );
}

/**
 * Pressed while something is typed, a button leaves the focus where it is: what is typed takes effect when the press is over, and
 * the button does not move away under the finger.
 */
function keepFocus(event: MouseEvent): void {
  event.preventDefault();
}
