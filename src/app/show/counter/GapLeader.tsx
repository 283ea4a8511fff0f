import type { GapWord } from "../../../studies/wording/gapTexts.ts";
import { TextLines } from "./PictureNames.tsx";
import { pathOf } from "./pathOf.ts";
import type { PlacedGap } from "./pictureLayout.ts";

export type GapLeaderProps = {
  placed: PlacedGap;
  /** Where the label begins, px. */
  labels: number;
};

/** Pixels about the middle; another shape for each word, so that color is never alone. */
const SHAPES: Readonly<Record<GapWord, string>> = {
  rubs: "M-6 -6L6 6M6 -6L-6 6",
  close: "M0 -7L7 5L-7 5Z",
  clear: "M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0",
};

/** A gap between its two marks, and its label on a leader: whose, to what, how much. */
export function GapLeader({ placed: { word, isIn, lines, x, y, to, onRing }, labels }: GapLeaderProps) {
  return (
    <g className={`wheel-gap wheel-gap-${word}`}>
      <path className="wheel-leader" d={pathOf([to, [labels, y]], false)} />
      <path className="wheel-between" d={pathOf([onRing, to], false)} />
      {/* Nothing stands on what is filled. */}
      {!isIn && <path className="wheel-mark" d={SHAPES[word]} transform={`translate(${to[0]} ${to[1]})`} />}
      <path className="wheel-mark" d={SHAPES[word]} transform={`translate(${labels + 8} ${y})`} />
      <TextLines lines={lines} x={x} y={y} kind="gap" />
    </g>
  );
}
