import { Dimension } from "./Dimension.tsx";

export type RotorSketchProps = {
  /** `diameter`, `thickness` or `inboard`. */
  lit: string;
};

/** Rotor and hub face from the front, outboard to the right. */
export function RotorSketch({ lit }: RotorSketchProps) {
  return (
    <>
      <path className="sketch-axis" d="M20,82 L206,82" />
      <rect className="sketch-part" x={84} y={16} width={18} height={132} />
      <path className="sketch-ink" d="M102,54 L150,54 L150,110 L102,110 M150,40 L150,124" />
      {lit === "diameter" && <Dimension from={[84, 16]} to={[84, 148]} aside={30} />}
      {lit === "thickness" && <Dimension from={[84, 148]} to={[102, 148]} aside={10} />}
      {lit === "inboard" && <Dimension from={[102, 124]} to={[150, 124]} aside={16} />}
      <text className="sketch-word" x={156} y={50}>
        hub face
      </text>
      <text className="sketch-word" x={30} y={28}>
        rotor
      </text>
    </>
  );
}
