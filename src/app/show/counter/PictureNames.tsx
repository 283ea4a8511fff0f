import { pathOf } from "./pathOf.ts";
import { FONT, LINE, type PlacedText } from "./pictureLayout.ts";

export type TextLinesProps = Pick<PlacedText, "lines" | "x" | "y"> & {
  /** Which letters it has. */
  kind: keyof typeof FONT;
  /** Its lines end at x. Default they begin there. */
  isBefore?: boolean;
};

/** A text in its lines, about the middle of all of them. */
export function TextLines({ lines, x, y, kind, isBefore = false }: TextLinesProps) {
  return (
    <text y={y} textAnchor={isBefore ? "end" : "start"} fontSize={FONT[kind]}>
      {lines.map((line, i) => (
        <tspan
          // biome-ignore lint/suspicious/noArrayIndexKey: lines keep their order
          key={i}
          x={x}
          dy={`${i === 0 ? 0.35 - 0.5 * LINE[kind] * (lines.length - 1) : LINE[kind]}em`}
        >
          {line}
        </tspan>
      ))}
    </text>
  );
}

/** What things are called, each with a line to it. */
export function PictureNames({ names }: { names: readonly PlacedText[] }) {
  return (
    <g className="wheel-names">
      {names.map(({ lines, x, y, to }) => (
        <g key={lines.join(" ")}>
          <path className="wheel-name-line" d={pathOf([[x + 3, y], to], false)} />
          <circle cx={to[0]} cy={to[1]} r={2.4} />
          <TextLines lines={lines} x={x} y={y} kind="name" isBefore />
        </g>
      ))}
    </g>
  );
}
