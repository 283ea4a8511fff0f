import { Dimension } from "./Dimension.tsx";

export type WheelSketchProps = {
  /** Key of the number the sketch is about. */
  lit: string;
};

/** A wheel cut through its axis, outboard to the right: rim, barrel, center with its mounting face. */
export function WheelSketch({ lit }: WheelSketchProps) {
  return (
    <>
      <path className="sketch-axis" d="M14,82 L206,82" />
      <path
        className="sketch-part"
        d="M40,14 L44,14 L44,24 L62,24 L74,34 L128,34 L150,24 L176,24 L176,14 L180,14 L180,30 L152,30 L132,40 L72,40 L60,30 L40,30 Z"
      />
      <path
        className="sketch-part"
        d="M40,150 L44,150 L44,140 L62,140 L74,130 L128,130 L150,140 L176,140 L176,150 L180,150 L180,134 L152,134 L132,124 L72,124 L60,134 L40,134 Z"
      />
      <path className={lit === "center" ? "sketch-lit" : "sketch-ink"} d="M132,40 L132,124" />
      <path className="sketch-ink" d="M138,40 L138,124" />
      {lit === "rimDiameter" && <Dimension from={[176, 24]} to={[176, 140]} aside={-20} word="" />}
      {lit === "rimWidth" && <Dimension from={[44, 24]} to={[176, 24]} aside={-16} />}
      {lit === "barrelDiameter" && <Dimension from={[92, 40]} to={[92, 124]} />}
      {lit === "backspacing" && <Dimension from={[40, 134]} to={[132, 134]} aside={-34} />}
      {lit === "offset" && (
        <>
          <path className="sketch-axis" d="M110,6 L110,158" />
          <Dimension from={[110, 100]} to={[132, 100]} />
          <text className="sketch-word" x={50} y={116}>
            center plane
          </text>
        </>
      )}
      <text className="sketch-word" x={142} y={78}>
        face
      </text>
      <text className="sketch-word" x={184} y={160}>
        out →
      </text>
    </>
  );
}
