import { Dimension } from "./Dimension.tsx";

export type KnuckleSketchProps = {
  /** Key of the number the sketch is about. */
  lit: string;
};

// From the front, left wheel; outboard is to the right. The steering axis leans inboard at the top.
const LOWER = [80, 132] as const;
const UPPER = [62, 26] as const;
const PIN = [71, 79] as const;
const FACE = [158, 84] as const;

/** The knuckle from the front: ball joints, steering axis, pin and hub face. */
export function KnuckleSketch({ lit }: KnuckleSketchProps) {
  return (
    <>
      <rect className="sketch-faint" x={142} y={8} width={52} height={150} rx={14} />
      <path className="sketch-axis" d="M84,155 L58,3" />
      <path
        className="sketch-ink"
        d={`M${LOWER} L${UPPER} M${PIN} L${FACE} M${FACE[0] + 1},66 L${FACE[0] - 1},102`}
      />
      <circle className="sketch-part" cx={LOWER[0]} cy={LOWER[1]} r={6} />
      <circle className="sketch-part" cx={UPPER[0]} cy={UPPER[1]} r={6} />
      <text className="sketch-word" x={2} y={158}>
        lower ball joint
      </text>
      <text className="sketch-word" x={166} y={20} textAnchor="middle">
        tire
      </text>
      {lit === "span" && <Dimension from={LOWER} to={UPPER} aside={-24} word="span" wordAt={[-36, -6]} />}
      {lit === "pinHeight" && (
        <Dimension from={LOWER} to={PIN} aside={-24} word="pin height" wordAt={[-46, 30]} />
      )}
      {lit === "hubFace" && <Dimension from={PIN} to={FACE} aside={22} word="hub face" wordAt={[-24, 16]} />}
      {lit === "pinAngle" && (
        <>
          <path className="sketch-axis" d={`M${PIN} L160,64`} />
          <path className="sketch-lit" d="M141,67.3 A71,71 0 0 1 141.5,83" />
          <text className="sketch-word-lit" x={84} y={62}>
            angle
          </text>
          <text className="sketch-word" x={86} y={100}>
            pin
          </text>
        </>
      )}
    </>
  );
}

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
