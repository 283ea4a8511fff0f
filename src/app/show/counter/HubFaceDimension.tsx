import { pathOf } from "./pathOf.ts";
import type { SheetPoint, WheelDrawing } from "./wheelDrawing.ts";

export type HubFaceDimensionProps = {
  drawing: WheelDrawing;
  /** How far down the sheet it stands at the hub face, mm. */
  at: number;
  perPx: number;
  text: string;
};

/** The distance from the steering axis to the hub face along the pin, with its extension lines. */
export function HubFaceDimension({ drawing, at, perPx, text }: HubFaceDimensionProps) {
  const { pinStart, hubFace } = drawing;
  const [du, dv] = [hubFace[0] - pinStart[0], hubFace[1] - pinStart[1]];
  // Square to the pin, down the sheet, so far that the line stands at `at` under the hub face.
  const down = Math.abs(du) < 1e-6 ? 0 : (at - hubFace[1]) / du;
  const moved = ([u, v]: SheetPoint, more = 0): SheetPoint => {
    const share = down === 0 ? 0 : down + (more * perPx) / du;
    return [u - share * dv, v + share * du];
  };
  const ends = [moved(pinStart), moved(hubFace)] as const;
  const tick = 5 * perPx;
  return (
    <g className="wheel-dimension">
      <path className="wheel-extension" d={pathOf([pinStart, moved(pinStart, 7)], false)} />
      <path className="wheel-extension" d={pathOf([hubFace, moved(hubFace, 7)], false)} />
      <path d={pathOf(ends, false)} />
      {ends.map(([u, v], i) => (
        <path
          key={i === 0 ? "axis" : "face"}
          className="wheel-tick"
          d={`M${u - tick} ${v + tick}L${u + tick} ${v - tick}`}
        />
      ))}
      <text x={ends[1][0] + 10 * perPx} y={ends[1][1]} dy="0.35em">
        {text}
      </text>
    </g>
  );
}
