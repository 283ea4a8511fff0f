export type ArmSketchProps = {
  /** `frontPivot`, `rearPivot` or `ballJoint`. */
  lit: string;
};

const POINTS = {
  frontPivot: [150, 30],
  rearPivot: [150, 130],
  ballJoint: [56, 82],
} as const;

/** The left control arm from above, front up: two pivots on the frame and the ball joint. */
export function ArmSketch({ lit }: ArmSketchProps) {
  return (
    <>
      <path className="sketch-axis" d="M150,6 L150,156" />
      <rect className="sketch-faint" x={8} y={30} width={38} height={104} rx={10} />
      <path className="sketch-ink" d="M150,30 L56,82 L150,130" />
      {Object.entries(POINTS).map(([key, [x, y]]) => (
        <circle
          key={key}
          className={key === lit ? "sketch-spot" : "sketch-part"}
          cx={x}
          cy={y}
          r={key === lit ? 7 : 5}
        />
      ))}
      <text className="sketch-word" x={158} y={84}>
        frame
      </text>
      <text className="sketch-word" x={172} y={16}>
        ↑ front
      </text>
    </>
  );
}
