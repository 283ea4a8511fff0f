import type { GapWord } from "../../../studies/wording/gapTexts.ts";
import type { GapLabel } from "../../../studies/wording/pictureTexts.ts";
import { lines, pathOf } from "./pathOf.ts";
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

/** Letters in a line of a part's name, and so many lines. */
const LETTERS = 13;
const MOST_LINES = 2;

/** A gap between its two marks, and its label on a leader: whose, to what, how much. */
export function GapLeader({ gap, label, letter, at, perPx }: GapLeaderProps) {
  const { word, said, amount } = label;
  const shape = (place: SheetPoint) => `translate(${place[0]} ${place[1]}) scale(${perPx})`;
  const labelMark: SheetPoint = [at[0] + 8 * perPx, at[1]];
  const part = lines(`${letter} ${gap.part}`, LETTERS).slice(0, MOST_LINES);
  const written = [...part, `${said} ${amount}`.trimEnd()];
  return (
    <g className={`wheel-gap wheel-gap-${word}`}>
      <path className="wheel-leader" d={pathOf([gap.onPart, at], false)} />
      <path className="wheel-between" d={pathOf([gap.onRing, gap.onPart], false)} />
      <path className="wheel-mark" d={SHAPES[word]} transform={shape(gap.onPart)} />
      <path className="wheel-mark" d={SHAPES[word]} transform={shape(labelMark)} />
      <text x={at[0] + 18 * perPx} y={at[1]} dy="0.35em">
        {written.map((line, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines keep their order
          <tspan key={i} x={at[0] + 18 * perPx} dy={i === 0 ? "0.35em" : "1.15em"}>
            {line}
          </tspan>
        ))}
      </text>
    </g>
  );
}
