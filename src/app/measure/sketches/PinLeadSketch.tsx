import { Dimension } from "./Dimension.tsx";

/** The knuckle from the left side, front to the left: the pin ahead of the steering axis. */
export function PinLeadSketch() {
  return (
    <>
      <circle className="sketch-faint" cx={92} cy={82} r={72} />
      <path className="sketch-axis" d="M110,4 L110,160" />
      <path className="sketch-ink" d="M110,26 L110,132 M110,82 L88,82" />
      <circle className="sketch-part" cx={110} cy={26} r={6} />
      <circle className="sketch-part" cx={110} cy={132} r={6} />
      <circle className="sketch-part" cx={88} cy={82} r={9} />
      <Dimension from={[88, 82]} to={[110, 82]} aside={26} word="lead" wordAt={[20, 5]} />
      <text className="sketch-word" x={4} y={156}>
        ← front
      </text>
      <text className="sketch-word" x={116} y={16}>
        steering axis
      </text>
    </>
  );
}
