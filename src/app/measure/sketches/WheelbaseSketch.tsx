import { Dimension } from "./Dimension.tsx";

/** The truck from its left side: front axle to rear axle. */
export function WheelbaseSketch() {
  return (
    <>
      <path className="sketch-ink" d="M8,84 L8,62 L52,56 L68,30 L110,30 L116,56 L212,56 L212,84" />
      <circle className="sketch-part" cx={42} cy={92} r={20} />
      <circle className="sketch-part" cx={172} cy={92} r={20} />
      <Dimension from={[42, 92]} to={[172, 92]} aside={38} />
      <text className="sketch-word" x={4} y={22}>
        ← front
      </text>
    </>
  );
}
