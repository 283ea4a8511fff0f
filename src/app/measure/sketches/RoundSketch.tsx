import { Dimension } from "./Dimension.tsx";

/** A round rod, cut across: its radius. */
export function RoundSketch() {
  return (
    <>
      <path className="sketch-ink" d="M14,52 L140,52 M14,112 L140,112" />
      <path className="sketch-axis" d="M6,82 L214,82" />
      <ellipse className="sketch-part" cx={140} cy={82} rx={18} ry={30} />
      <Dimension from={[140, 82]} to={[140, 52]} word="radius" wordAt={[24, 4]} />
    </>
  );
}
