import { Dimension } from "./Dimension.tsx";

/** Tire and fender lip with the gap between. */
export function GapSketch() {
  return (
    <>
      <path className="sketch-part" d="M30,158 C30,60 80,56 110,56 C140,56 190,60 190,158" />
      <path className="sketch-ink" d="M20,20 L110,20 L110,32" />
      <circle className="sketch-part" cx={110} cy={32} r={4} />
      <Dimension from={[110, 36]} to={[110, 56]} word="gap" wordAt={[8, 4]} />
      <text className="sketch-word" x={98} y={110}>
        tire
      </text>
      <text className="sketch-word" x={24} y={14}>
        fender
      </text>
    </>
  );
}
