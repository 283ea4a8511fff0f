import "./handles.css";
import { type KeyboardEvent, useRef } from "react";
import { useFormat } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import type { ScreenPoint } from "../overlay/gapMark.ts";
import { coordinateText } from "./coordinateText.ts";
import { focusHandle, handleStore } from "./handleStore.ts";
import { nudgeStagePoint } from "./moveStagePoint.ts";
import { onPicture } from "./picturePlane.ts";
import type { StagePoint } from "./stagePoints.ts";
import { useStagePoints } from "./stagePoints.ts";
import { useHandleDrag } from "./useHandleDrag.ts";

/** Ways on the picture: right and up. */
const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Steps to another point: by its place in the list. */
const TURNS: Readonly<Record<string, (i: number, count: number) => number>> = {
  PageDown: (i, count) => (i + 1) % count,
  PageUp: (i, count) => (i + count - 1) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
};

/** Half a square's side, and how far around it a press takes it, pixels. */
const HALF = 4.5;
const GRIP = { fine: 11, coarse: 20 } as const;

/** Points of the setup over the picture: dragged in its plane, or moved with the arrow keys. One of them is in the tab order. */
export function StageHandles() {
  const { picture, plane, points, current } = useStagePoints();
  const format = useFormat();
  const hasKey = useRef(false);
  const drag = useHandleDrag(points, picture, plane);
  if (!picture || !plane || !current) return null;
  const grip = matchMedia("(pointer: coarse)").matches ? GRIP.coarse : GRIP.fine;

  const onKeyDown = (event: KeyboardEvent, point: StagePoint) => {
    const way = WAYS[event.key];
    const turn = TURNS[event.key];
    if (event.ctrlKey || event.metaKey || event.altKey || !(way || turn)) return;
    event.preventDefault();
    event.stopPropagation();
    if (turn) {
      const next = points[turn(points.indexOf(point), points.length)]!;
      focusHandle(event.currentTarget, next.key);
      return;
    }
    // A key held down is one step to undo.
    if (!hasKey.current) workbench.getState().beginGesture();
    hasKey.current = true;
    const count = event.shiftKey ? 8 : 1;
    const isMirrored = point.seen[1] !== point.at[1];
    const nudge = (axis: number, pixels: number) => {
      const back = axis === 1 && isMirrored ? -1 : 1;
      if (pixels !== 0) nudgeStagePoint(point, axis, back * Math.sign(pixels) * count);
    };
    nudge(plane.across, way![0] * picture.axes[plane.across]!.x);
    nudge(plane.along, -way![1] * picture.axes[plane.along]!.y);
  };
  const endKey = () => {
    if (hasKey.current) workbench.getState().endGesture();
    hasKey.current = false;
  };
  const places = points.map(({ seen }) => onPicture(picture, seen).x);
  const middle = 0.5 * (Math.min(...places) + Math.max(...places));
  return (
    // biome-ignore lint/a11y/useSemanticElements: no fieldset can be drawn in
    <svg className="stage-handles" role="group" aria-label="Points to move" {...drag}>
      {points.map((point) => {
        const { x, y } = onPicture(picture, point.seen);
        const isCurrent = point === current;
        return (
          // biome-ignore lint/a11y/useSemanticElements: there is no button element inside a drawing
          <g
            key={point.key}
            className={isCurrent ? "stage-handle stage-handle-current" : "stage-handle"}
            role="button"
            tabIndex={isCurrent ? 0 : -1}
            aria-label={`${point.name}: ${coordinateText(point, plane, format)}`}
            data-point={point.key}
            transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}
            onFocus={() => handleStore.setState({ current: point.key })}
            onBlur={endKey}
            onKeyDown={(event) => onKeyDown(event, point)}
            onKeyUp={endKey}
          >
            <circle className="stage-grip" r={grip} />
            {point.sort === "arm" ? (
              <circle className="stage-knob" r={HALF + 0.5} />
            ) : (
              <rect className="stage-knob" x={-HALF} y={-HALF} width={2 * HALF} height={2 * HALF} />
            )}
          </g>
        );
      })}
      <HandleName name={current.name} at={onPicture(picture, current.seen)} middle={middle} />
    </svg>
  );
}

/** The name beside the point pointed out: on the side where the truck's middle is, and inside the picture. */
function HandleName({ name, at, middle }: { name: string; at: ScreenPoint; middle: number }) {
  const isLeft = at.x > middle;
  return (
    <text
      className="stage-handle-name"
      x={at.x + (isLeft ? -14 : 14)}
      y={at.y < 30 ? at.y + 20 : at.y - 10}
      textAnchor={isLeft ? "end" : "start"}
    >
      {name}
    </text>
  );
}
