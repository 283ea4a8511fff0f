export type BoxSketchProps = {
  /** `min` or `max`. */
  lit: string;
};

/** A box along the axes, x forward to the left and toward the eye: its lowest and its highest corner. */
export function BoxSketch({ lit }: BoxSketchProps) {
  return (
    <>
      <path
        className="sketch-ink"
        d="M60,70 L120,90 L120,140 L60,120 Z M120,90 L180,64 L180,114 L120,140 M60,70 L120,44 L180,64"
      />
      <path className="sketch-axis" d="M60,120 L120,94 L180,114 M120,94 L120,44" />
      <circle className="sketch-spot" cx={lit === "min" ? 180 : 60} cy={lit === "min" ? 114 : 70} r={7} />
      <path className="sketch-thin" d="M30,140 L6,132 M30,140 L52,131 M30,140 L30,116" />
      <text className="sketch-word" x={0} y={126}>
        x
      </text>
      <text className="sketch-word" x={54} y={134}>
        y
      </text>
      <text className="sketch-word" x={26} y={112}>
        z
      </text>
    </>
  );
}
