import "./handles.css";
import { type KeyboardEvent, useEffect, useLayoutEffect, useRef } from "react";
import { workbench } from "../../state/workbench.ts";
import type { ScreenPoint } from "../overlay/gapMark.ts";
import { focusHandle, handleStore } from "./handleStore.ts";
import { type Grab, useHandleDrag } from "./useHandleDrag.ts";

/** Something that can be moved in the picture. */
export interface HandleMark {
  readonly key: string;
  readonly name: string;
  /** What it is now. */
  readonly value: string;
  /** Where it is drawn, pixels. */
  readonly at: ScreenPoint;
  readonly isRound: boolean;
}

export type HandleMarksProps = {
  label: string;
  marks: readonly HandleMark[];
  /** Key of the one pointed out. */
  current: string;
  grab: Grab;
  /** Moves one by keys: which way on the picture, right and up, and how many steps. */
  nudge: (key: string, right: number, up: number, steps: number) => void;
};

/** Ways on the picture: right and up. */
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Steps to another mark: by its place in the list. */
const TURNS: Readonly<Record<string, (i: number, count: number) => number>> = {
  PageDown: (i, count) => (i + 1) % count,
  PageUp: (i, count) => (i + count - 1) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
};

/** Half a square's side, and how far around it a press takes it, pixels. */
const HALF = 4.5;
const GRIP = { fine: 11, coarse: 20 } as const;

/** Marks over the picture: dragged, or moved with the arrow keys, each gesture one step to undo. One is in the tab order. */
export function HandleMarks({ label, marks, current, grab, nudge }: HandleMarksProps) {
  const hasKey = useRef(false);
  const { isDragging, drag } = useHandleDrag(marks, grab);
  const shown = marks.find(({ key }) => key === current);
  // Labels keep off marks, but for the one in the hand: they would give way to it wherever it goes.
  useEffect(() => {
    const resting = isDragging ? marks.filter(({ key }) => key !== current) : marks;
    handleStore.setState({ marks: resting.map(({ at }) => at) });
  }, [marks, isDragging, current]);
  useEffect(() => () => handleStore.setState({ marks: [] }), []);
  const grip = matchMedia("(pointer: coarse)").matches ? GRIP.coarse : GRIP.fine;
  const onKeyDown = (event: KeyboardEvent, key: string) => {
    const way = WAYS[event.key];
    const turn = TURNS[event.key];
    if (event.ctrlKey || event.metaKey || event.altKey || !(way || turn)) return;
    event.preventDefault();
    event.stopPropagation();
    if (turn) {
      const i = marks.findIndex((mark) => mark.key === key);
      focusHandle(event.currentTarget, marks[turn(i, marks.length)]!.key);
      return;
    }
    // A key held down is one step to undo.
    if (!hasKey.current) workbench.getState().beginGesture();
    hasKey.current = true;
    nudge(key, way![0], way![1], event.shiftKey ? 8 : 1);
  };
  const endKey = () => {
    if (hasKey.current) workbench.getState().endGesture();
    hasKey.current = false;
  };
  const places = marks.map(({ at }) => at.x);
  return (
    // biome-ignore lint/a11y/useSemanticElements: no fieldset can be drawn in
    <svg className="stage-handles" role="group" aria-label={label} {...drag}>
      {marks.map(({ key, name, value, at, isRound }) => (
        // biome-ignore lint/a11y/useSemanticElements: there is no button element inside a drawing
        <g
          key={key}
          className={key === current ? "stage-handle stage-handle-current" : "stage-handle"}
          role="button"
          tabIndex={key === current ? 0 : -1}
          aria-label={`${name}: ${value}`}
          data-point={key}
          transform={`translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})`}
          onFocus={() => handleStore.setState({ current: key })}
          onBlur={endKey}
          onKeyDown={(event) => onKeyDown(event, key)}
          onKeyUp={endKey}
        >
          <circle className="stage-grip" r={grip} />
          {isRound ? (
            <circle className="stage-knob" r={HALF + 0.5} />
          ) : (
            <rect className="stage-knob" x={-HALF} y={-HALF} width={2 * HALF} height={2 * HALF} />
          )}
        </g>
      ))}
      {shown && <HandleName mark={shown} middle={0.5 * (Math.min(...places) + Math.max(...places))} />}
    </svg>
  );
}

/** Pixels from a mark to its name, and from a name to the picture's edge. */
const OFF_NAME = 14;
const EDGE = 3;

/** The name beside the mark pointed out: on the side where the middle of them all is, and inside the picture. */
function HandleName({ mark: { name, at }, middle }: { mark: HandleMark; middle: number }) {
  const text = useRef<SVGTextElement>(null);
  const isLeft = at.x > middle;
  useLayoutEffect(() => {
    const [one, svg] = [text.current, text.current?.ownerSVGElement];
    if (!one || !svg) return;
    const width = one.getComputedTextLength();
    const from = isLeft ? at.x - OFF_NAME - width : at.x + OFF_NAME;
    one.setAttribute("x", String(Math.max(EDGE, Math.min(svg.clientWidth - width - EDGE, from))));
  });
  return (
    <text ref={text} className="stage-handle-name" y={at.y < 30 ? at.y + 20 : at.y - 10}>
      {name}
    </text>
  );
}
