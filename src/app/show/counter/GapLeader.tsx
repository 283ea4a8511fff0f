import type { GapWord } from "../../../studies/wording/gapTexts.ts";
import type { GapLabel } from "../../../studies/wording/pictureTexts.ts";
import { pathOf } from "./pathOf.ts";
import type { DrawnGap, SheetPoint } from "./wheelDrawing.ts";

export type GapLeaderProps = {
  gap: DrawnGap;
  label: GapLabel;
  letter: string;
  /** Where the label begins. */
  at: SheetPoint;
  perPx: number;
};

/** Pixels about the middle; another shape for each word, so that color is never alone. */
const SHAPES: Readonly<Record<GapWord, string>> = {
  rubs: "M-6 -6L6 6M6 -6L-6 6",
  close: "M0 -7L7 5L-7 5Z",
  clear: "M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0",
};

/** A gap between its two marks, and its label of one or two lines on a leader. */
export function GapLeader({ gap, label, letter, at, perPx }: GapLeaderProps) {
  const { word, said, amount } = label;
  const shape = (place: SheetPoint) => `translate(${place[0]} ${place[1]}) scale(${perPx})`;
  const labelMark: SheetPoint = [at[0] + 8 * perPx, at[1]];
  return (
    <g className={`wheel-gap wheel-gap-${word}`}>
      <path className="wheel-leader" d={pathOf([gap.onPart, at], false)} />
      <path className="wheel-between" d={pathOf([gap.onRing, gap.onPart], false)} />
      <path className="wheel-mark" d={SHAPES[word]} transform={shape(gap.onPart)} />
      <path className="wheel-mark" d={SHAPES[word]} transform={shape(labelMark)} />
      <text x={at[0] + 20 * perPx} y={at[1]} dy="0.35em">
        {letter} {said}
        {amount !== "" && (
          <tspan x={at[0] + 20 * perPx} dy="1.2em">
            {amount}
          </tspan>
        )}
      </text>
    </g>
  );
}
