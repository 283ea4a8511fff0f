import { Dimension } from "./Dimension.tsx";

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
