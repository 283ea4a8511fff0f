import type { DrawingFrame } from "./drawingFrame.ts";
import { lines, pathOf } from "./pathOf.ts";
import type { PictureName } from "./pictureNames.ts";

export type PictureNamesProps = {
  names: readonly PictureName[];
  frame: DrawingFrame;
};

/** Letters in a line. */
const LETTERS = 11;

/** What things are called, each with a line to it. */
export function PictureNames({ names, frame: { names: end, perPx } }: PictureNamesProps) {
  return (
    <g className="wheel-names">
      {names.map(({ text, to, v }) => {
        const written = lines(text, LETTERS);
        return (
          <g key={text}>
            <path className="wheel-name-line" d={pathOf([[end + 3 * perPx, v], to], false)} />
            <circle cx={to[0]} cy={to[1]} r={2.4 * perPx} />
            <text x={end} y={v} textAnchor="end">
              {written.map((line, i) => (
                <tspan key={line} x={end} dy={i === 0 ? `${0.35 - 0.5 * (written.length - 1)}em` : "1em"}>
                  {line}
                </tspan>
              ))}
            </text>
          </g>
        );
      })}
    </g>
  );
}
