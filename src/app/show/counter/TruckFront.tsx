import { PICTURE_NAMES } from "../../../studies/wording/pictureTexts.ts";
import type { DrawingFrame } from "./drawingFrame.ts";

/** Says which way the truck drives on a picture from above: down the sheet. */
export function TruckFront({ frame: { left, top, width, height, perPx } }: { frame: DrawingFrame }) {
  const [u, v] = [left + 0.5 * width, top + height - 14 * perPx];
  return (
    <g className="wheel-front">
      <path d="M-6 -7H6L0 6Z" transform={`translate(${u - 66 * perPx} ${v}) scale(${perPx})`} />
      <text x={u - 54 * perPx} y={v} dy="0.35em">
        {PICTURE_NAMES.front}
      </text>
    </g>
  );
}
