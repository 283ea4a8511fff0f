import { type DrawingFrame, dimensionAt } from "./drawingFrame.ts";
import { pathOf } from "./pathOf.ts";
import { dimensionShift, type SheetPoint, type WheelDrawing } from "./wheelDrawing.ts";

export type HubFaceDimensionProps = {
  drawing: WheelDrawing;
  frame: DrawingFrame;
  /** Its place among the dimensions. */
  place: number;
};

/** Pixels that the lines at its ends reach past it. */
const PAST = 7;

/** The distance from the steering axis to the hub face along the pin, with its extension lines. */
export function HubFaceDimension({ drawing, frame, place }: HubFaceDimensionProps) {
  const { perPx } = frame;
  const { pinStart, hubFace } = drawing;
  const [du, dv] = dimensionShift(drawing, dimensionAt(frame, place));
  const far = Math.hypot(du, dv);
  const past = far > 0 ? 1 + (PAST * perPx) / far : 1;
  const moved = ([u, v]: SheetPoint, share = 1): SheetPoint => [u + share * du, v + share * dv];
  const ends = [moved(pinStart), moved(hubFace)] as const;
  const tick = 5 * perPx;
  return (
    <g className="wheel-dimension">
      <path className="wheel-extension" d={pathOf([pinStart, moved(pinStart, past)], false)} />
      <path className="wheel-extension" d={pathOf([hubFace, moved(hubFace, past)], false)} />
      <path d={pathOf(ends, false)} />
      {ends.map(([u, v], i) => (
        <path
          key={i === 0 ? "axis" : "face"}
          className="wheel-tick"
          d={`M${u - tick} ${v + tick}L${u + tick} ${v - tick}`}
        />
      ))}
    </g>
  );
}
