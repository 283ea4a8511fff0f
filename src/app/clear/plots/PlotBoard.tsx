import {
  type KeyboardEvent,
  type PointerEvent,
  type RefObject,
  useId,
  useMemo,
  useRef,
  useState,
} from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { type PlotSpec, plotOver } from "../../parts/plotNumbers.ts";
import { useWidth } from "../../parts/useSize.ts";
import { PlotPicture } from "./PlotPicture.tsx";
import { PlotValues } from "./PlotValues.tsx";
import { placeText } from "./placeText.ts";
import { useBand } from "./plotBands.ts";
import { setCursor, useCursor } from "./plotCursor.ts";
import { isReversed, moved, plotBox, plotFrame, type Zoom, zoomed } from "./plotFrame.ts";
import { usePrinting } from "./usePrinting.ts";
import { nearestIndex } from "./valueAt.ts";

export type PlotBoardProps = {
  spec: PlotSpec;
  /** Where the pose shown stands on the x scale. */
  at: number;
  format: LengthFormat;
  /** Id of what names it. */
  labelledBy: string;
  /** px it is wide on paper. Default as wide as on the screen. */
  paper?: number;
  /** px, by its width. */
  heightFor: (width: number, isPrinting: boolean) => number;
  zoom: Zoom | null;
  onZoom: (zoom: Zoom | null) => void;
  /** Puts the pose to an x. */
  onGo: (x: number) => void;
  /** The drawing, for whoever saves it. */
  svg?: RefObject<SVGSVGElement | null>;
};

/** px. A hand that moves less has pressed, not dragged. */
const DRAGGED = 6;

/** How much closer one press looks. */
const CLOSER = 1.5;

interface Drag {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
}

/**
 * A plot's drawing with its numbers. Under the mouse, a finger or the arrow keys it is read, and with it every plot over the
 * same; a press goes to that pose; a mouse dragged over it looks closer (+, −, 0 and Shift with the arrows by keys).
 */
export function PlotBoard(props: PlotBoardProps) {
  const { spec, at, format, labelledBy, heightFor, zoom, onZoom, onGo } = props;
  const id = useId();
  const own = useRef<SVGSVGElement>(null);
  const svg = props.svg ?? own;
  const board = useRef<HTMLDivElement>(null);
  const laid = useWidth(board, 340);
  const isPrinting = usePrinting();
  const width = isPrinting ? (props.paper ?? laid) : laid;
  const height = heightFor(width, isPrinting);
  const band = useBand(spec.id);
  const frame = useMemo(
    () => plotFrame(spec, plotBox(width, height), zoom, band),
    [spec, width, height, zoom, band],
  );
  const [drag, setDrag] = useState<Drag | null>(null);
  const wasDragged = useRef(false);
  const over = plotOver(spec);
  const read = useCursor(over);
  const { fromInput = same, toInput = same } = spec.x;
  const shownAt = read === null ? at : fromInput(read);
  const readTo = (x: number) => setCursor({ over, input: toInput(x) });

  const placeUnder = ({ clientX, clientY }: { readonly clientX: number; readonly clientY: number }) => {
    const box = svg.current!.getBoundingClientRect();
    return [((clientX - box.left) / box.width) * width, ((clientY - box.top) / box.height) * height] as const;
  };
  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    wasDragged.current = false;
    const from = placeUnder(event);
    if (event.pointerType === "mouse" && event.button === 0) {
      event.currentTarget.setPointerCapture(event.pointerId);
      setDrag({ from, to: from });
    } else readTo(frame.x.invert(from[0]));
  };
  const onPointerMove = (event: PointerEvent) => {
    const to = placeUnder(event);
    if (drag && Math.hypot(to[0] - drag.from[0], to[1] - drag.from[1]) > DRAGGED) wasDragged.current = true;
    if (drag) setDrag({ ...drag, to });
    readTo(frame.x.invert(to[0]));
  };
  const onPointerUp = () => {
    if (drag && wasDragged.current) onZoom(zoomOf(drag, frame) ?? zoom);
    setDrag(null);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const way = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    const along = way === undefined ? 0 : isReversed(spec) ? -way : way;
    if (along !== 0 && event.shiftKey && zoom) onZoom(moved(spec, zoom, 0.25 * along));
    else if (along !== 0) {
      const xs = spec.series[0]?.points.map((p) => p.x) ?? [];
      if (xs.length > 0) readTo(xs[Math.min(xs.length - 1, Math.max(0, nearestIndex(xs, shownAt) + along))]!);
    } else if (event.key === "+" || event.key === "=") onZoom(zoomed(spec, zoom, shownAt, CLOSER));
    else if (event.key === "-") onZoom(zoomed(spec, zoom, shownAt, 1 / CLOSER));
    else if (event.key === "0") onZoom(null);
    else if (event.key === "Enter" && read !== null) onGo(shownAt);
    else if (event.key === "Escape" && read !== null) setCursor(null);
    else return;
    event.preventDefault();
  };

  const [low, high] = [frame.across.low, frame.across.high];
  const isInSight = shownAt >= low && shownAt <= high;
  return (
    <>
      <div
        ref={board}
        className="plot-board"
        role="slider"
        tabIndex={0}
        aria-labelledby={labelledBy}
        aria-describedby={`${id}-values`}
        aria-valuemin={low}
        aria-valuemax={high}
        aria-valuenow={Math.min(high, Math.max(low, shownAt))}
        aria-valuetext={placeText(spec, shownAt, format)}
        onKeyDown={onKeyDown}
        onBlur={() => setCursor(null)}
      >
        <svg
          ref={svg}
          viewBox={`0 0 ${width} ${height}`}
          aria-hidden="true"
          onPointerDown={onPointerDown}
          onPointerMove={onPointerMove}
          onPointerUp={onPointerUp}
          onPointerCancel={() => setDrag(null)}
          onPointerLeave={(event) => event.pointerType === "mouse" && drag === null && setCursor(null)}
          onClick={(event) => {
            if (!wasDragged.current) onGo(frame.x.invert(placeUnder(event)[0]));
          }}
        >
          <PlotPicture spec={spec} frame={frame} band={band} format={format} />
          {isInSight && (
            <line
              className={read === null ? "plot-pose" : "plot-read"}
              x1={frame.x(shownAt)}
              x2={frame.x(shownAt)}
              y1={frame.box.top}
              y2={height - frame.box.bottom}
            />
          )}
          {drag && wasDragged.current && (
            <PickRect drag={drag} top={frame.box.top} bottom={height - frame.box.bottom} />
          )}
        </svg>
      </div>
      <PlotValues
        id={`${id}-values`}
        spec={spec}
        at={shownAt}
        isPose={read === null}
        band={band}
        format={format}
      />
    </>
  );
}

const same = (x: number) => x;

/** px. A box lower than this looks closer along x alone. */
const FLAT = 24;

/** What a box drawn over the plot looks at; null = it is but a line. */
function zoomOf({ from, to }: Drag, { x, y }: ReturnType<typeof plotFrame>): Zoom | null {
  if (Math.abs(to[0] - from[0]) <= DRAGGED) return null;
  const span = (a: number, b: number) => ({ low: Math.min(a, b), high: Math.max(a, b) });
  const up = Math.abs(to[1] - from[1]) < FLAT ? null : span(y.invert(from[1]), y.invert(to[1]));
  return { x: span(x.invert(from[0]), x.invert(to[0])), y: up };
}

function PickRect({ drag: { from, to }, top, bottom }: { drag: Drag; top: number; bottom: number }) {
  const isFlat = Math.abs(to[1] - from[1]) < FLAT;
  const [y0, y1] = isFlat ? [top, bottom] : [Math.min(from[1], to[1]), Math.max(from[1], to[1])];
  return (
    <rect
      className="plot-pick"
      x={Math.min(from[0], to[0])}
      width={Math.abs(to[0] - from[0])}
      y={y0}
      height={y1 - y0}
    />
  );
}
