import { Dimension } from "./Dimension.tsx";

/** The left knuckle from above, front up: the outer tie rod end from the steering axis. */
export function SteeringArmSketch() {
  return (
    <>
      <rect className="sketch-faint" x={20} y={10} width={44} height={130} rx={12} />
      <path className="sketch-ink" d="M110,62 L64,62 M110,62 L130,132" />
      <path className="sketch-ink" d="M130,132 L212,128" />
      <circle className="sketch-part" cx={110} cy={62} r={7} />
      <circle className="sketch-spot" cx={130} cy={132} r={6} />
      <Dimension from={[110, 62]} to={[110, 132]} word="x, − is behind" wordAt={[-82, 4]} />
      <Dimension from={[110, 132]} to={[130, 132]} aside={14} word="y, + outboard" wordAt={[-66, 14]} />
      <text className="sketch-word" x={122} y={58}>
        steering axis
      </text>
      <text className="sketch-word" x={150} y={120}>
        tie rod
      </text>
      <text className="sketch-word" x={180} y={16}>
        ↑ front
      </text>
    </>
  );
}
