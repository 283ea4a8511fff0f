/** The wheel from its side, front to the right, the steering axis leaning back at the top. */
export function CasterSketch() {
  return (
    <>
      <path className="sketch-axis" d="M110,6 L110,150" />
      <circle className="sketch-part" cx={110} cy={94} r={54} />
      <path className="sketch-ink" d="M24,148 L196,148" />
      <path className="sketch-lit" d="M120,148 L86,14 M110,22 A74,74 0 0 0 90,26" />
      <text className="sketch-word-lit" x={40} y={24}>
        + back
      </text>
      <text className="sketch-word" x={164} y={140}>
        front →
      </text>
    </>
  );
}
