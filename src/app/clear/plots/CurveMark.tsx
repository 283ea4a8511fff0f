import {
  symbol,
  symbolCircle,
  symbolCross,
  symbolDiamond,
  symbolSquare,
  symbolStar,
  symbolTriangle,
  symbolWye,
} from "d3-shape";

/** Marks in the order that curves take them: each is told from the next without color. */
const SYMBOLS = [
  symbolCircle,
  symbolSquare,
  symbolTriangle,
  symbolDiamond,
  symbolCross,
  symbolStar,
  symbolWye,
];

/** How many looks there are before they come again. */
const LOOKS = 8;

/** px², of a mark. */
const SIZE = 34;

const paths = SYMBOLS.map((type) => symbol(type, SIZE)() ?? "");

/** The class that gives a curve, its marks and its name one color. */
export function lookClass(of: number): string {
  return `plot-look-${of % LOOKS}`;
}

/** A curve's mark: what tells it from the others beside color and line. */
export function CurveMark({ of, x, y }: { of: number; x: number; y: number }) {
  return (
    <path
      className={`plot-mark ${lookClass(of)}`}
      transform={`translate(${x},${y})`}
      d={paths[of % paths.length]!}
    />
  );
}

/** A curve's line with its mark, for a list of names. */
export function CurveSample({ of, line, isMain }: { of: number; line: string; isMain: boolean }) {
  return (
    <svg className="plot-sample" viewBox="0 0 34 12" width="34" height="12" aria-hidden="true">
      <path
        className={`plot-sample-line plot-${line} ${isMain ? "plot-main" : ""} ${lookClass(of)}`}
        d="M1 6H33"
      />
      <CurveMark of={of} x={17} y={6} />
    </svg>
  );
}
