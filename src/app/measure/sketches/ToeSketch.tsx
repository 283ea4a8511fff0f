/** Both front wheels from above, front up, toed in. */
export function ToeSketch() {
  return (
    <>
      <path className="sketch-axis" d="M50,4 L50,156 M170,4 L170,156" />
      <rect className="sketch-part" x={36} y={38} width={28} height={90} rx={8} transform="rotate(9 50 83)" />
      <rect
        className="sketch-part"
        x={156}
        y={38}
        width={28}
        height={90}
        rx={8}
        transform="rotate(-9 170 83)"
      />
      <path className="sketch-lit" d="M50,83 L62,8 M50,18 A65,65 0 0 1 60.3,19" />
      <path className="sketch-ink" d="M66,83 L154,83" />
      <text className="sketch-word-lit" x={68} y={20}>
        + in
      </text>
      <text className="sketch-word" x={96} y={152}>
        ↑ front
      </text>
    </>
  );
}
