/** The left wheel from the front, its top leaning outward. */
export function CamberSketch() {
  return (
    <>
      <path className="sketch-axis" d="M110,6 L110,150" />
      <path className="sketch-ink" d="M24,148 L196,148" />
      <rect
        className="sketch-part"
        x={90}
        y={40}
        width={40}
        height={106}
        rx={8}
        transform="rotate(9 110 146)"
      />
      <path className="sketch-lit" d="M110,146 L132,12 M110,24 A122,122 0 0 1 129,26" />
      <text className="sketch-word-lit" x={136} y={24}>
        + out
      </text>
      <text className="sketch-word" x={150} y={140}>
        outboard →
      </text>
    </>
  );
}
