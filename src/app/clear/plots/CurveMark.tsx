/** Marks in the order that curves take them, of one size, in px about their middle: each is told from the next without color. */
const PATHS = [
  "M3.29,0A3.29,3.29,0,1,1,-3.29,0A3.29,3.29,0,1,1,3.29,0",
  "M-2.92,-2.92h5.83v5.83h-5.83Z",
  "M0,-5.12L4.43,2.56L-4.43,2.56Z",
  "M0,-5.43L3.13,0L0,5.43L-3.13,0Z",
  "M-3.91,-1.3H-1.3V-3.91H1.3V-1.3H3.91V1.3H1.3V3.91H-1.3V1.3H-3.91Z",
  "M0,-5.5L1.24,-1.7L5.23,-1.7L2,0.65L3.23,4.45L0,2.1L-3.23,4.45L-2,0.65L-5.23,-1.7L-1.24,-1.7Z",
  "M1.57,0.91V4.06H-1.57V0.91L-4.3,-0.67L-2.73,-3.39L0,-1.82L2.73,-3.39L4.3,-0.67Z",
];

/** How many looks there are before they come again. */
const LOOKS = 8;

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
      d={PATHS[of % PATHS.length]!}
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
