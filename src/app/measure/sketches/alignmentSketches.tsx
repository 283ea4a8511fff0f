import { Dimension } from "./Dimension.tsx";

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

/** A shim stack from above: frame, shims on the bolt, the arm's shaft. @param lit the key measured */
export function ShimSketch({ lit }: { lit: string }) {
  const ends: readonly [number, number] = lit === "step" ? [52, 64] : lit === "most" ? [40, 130] : [40, 88];
  return (
    <>
      <rect className="sketch-part" x={14} y={24} width={26} height={110} />
      {[40, 52, 64, 76].map((x) => (
        <rect key={x} className="sketch-part" x={x} y={46} width={12} height={66} />
      ))}
      <rect className="sketch-part" x={88} y={56} width={34} height={46} rx={4} />
      <path className="sketch-axis" d="M22,79 L196,79" />
      {lit === "most" && <path className="sketch-faint" d="M130,36 L130,122" />}
      <Dimension
        from={[ends[0], 40]}
        to={[ends[1], 40]}
        aside={-14}
        word={lit === "step" ? "one shim" : ""}
      />
      <text className="sketch-word" x={12} y={150}>
        frame
      </text>
      <text className="sketch-word" x={46} y={130}>
        shims
      </text>
      <text className="sketch-word" x={126} y={98}>
        arm shaft
      </text>
    </>
  );
}
