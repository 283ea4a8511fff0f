import { Dimension } from "./Dimension.tsx";

export type ArmSketchProps = {
  /** `frontPivot`, `rearPivot` or `ballJoint`. */
  lit: string;
};

const POINTS = {
  frontPivot: [150, 30],
  rearPivot: [150, 130],
  ballJoint: [56, 82],
} as const;

/** The left control arm from above, front up: two pivots on the frame and the ball joint. */
export function ArmSketch({ lit }: ArmSketchProps) {
  return (
    <>
      <path className="sketch-axis" d="M150,6 L150,156" />
      <rect className="sketch-faint" x={8} y={30} width={38} height={104} rx={10} />
      <path className="sketch-ink" d="M150,30 L56,82 L150,130" />
      {Object.entries(POINTS).map(([key, [x, y]]) => (
        <circle
          key={key}
          className={key === lit ? "sketch-spot" : "sketch-part"}
          cx={x}
          cy={y}
          r={key === lit ? 7 : 5}
        />
      ))}
      <text className="sketch-word" x={158} y={84}>
        frame
      </text>
      <text className="sketch-word" x={172} y={16}>
        ↑ front
      </text>
    </>
  );
}

/** An arm from above, front up, with what moves its pivots. @param lit the key measured */
export function PivotsSketch({ lit }: { lit: string }) {
  const isLit = (key: string) =>
    lit === key || (lit !== "front" && lit !== "rear") ? "sketch-lit" : "sketch-faint";
  const arrow = (y: number) => `M96,${y} L58,${y} M66,${y - 5} L57,${y} L66,${y + 5}`;
  return (
    <>
      <path className="sketch-axis" d="M30,8 L30,156" />
      <path className="sketch-part" d="M96,34 L188,82 L96,130 Z" />
      <circle className="sketch-part" cx={96} cy={34} r={8} />
      <circle className="sketch-part" cx={96} cy={130} r={8} />
      <circle className="sketch-part" cx={188} cy={82} r={9} />
      <path className={isLit("front")} d={arrow(34)} />
      <path className={isLit("rear")} d={arrow(130)} />
      <text className="sketch-word" x={108} y={26}>
        front pivot
      </text>
      <text className="sketch-word" x={108} y={150}>
        rear pivot
      </text>
      <text className="sketch-word" x={34} y={86}>
        ↑ front
      </text>
    </>
  );
}

export type LinkageSketchProps = {
  /** Key of the number or point the sketch is about, with the arm's before it: `stroke`, `innerEnd`, `pitman.end`. */
  lit: string;
  isRack: boolean;
};

/** The steering from above, front up, left side to the left: a rack, or pitman and idler arms with their center link. */
export function LinkageSketch({ lit, isRack }: LinkageSketchProps) {
  const spots: readonly (readonly [string, number, number])[] = isRack
    ? [["innerEnd", 76, 100]]
    : [
        ["innerEnd", 92, 112],
        ["innerEndRight", 128, 112],
        ["pitman.pivot", 70, 50],
        ["pitman.axis", 70, 50],
        ["pitman.end", 70, 112],
        ["idler.pivot", 150, 50],
        ["idler.axis", 150, 50],
        ["idler.end", 150, 112],
      ];
  return (
    <>
      <rect className="sketch-faint" x={4} y={40} width={20} height={90} rx={6} />
      <rect className="sketch-faint" x={196} y={40} width={20} height={90} rx={6} />
      {isRack ? (
        <path
          className="sketch-ink"
          d="M76,96 L144,96 L144,104 L76,104 Z M76,100 L34,116 M144,100 L186,116"
        />
      ) : (
        <path className="sketch-ink" d="M70,50 L70,112 L150,112 L150,50 M92,112 L34,122 M128,112 L186,122" />
      )}
      {spots
        .filter(([key]) => key !== lit && !key.endsWith("axis"))
        .map(([key, x, y]) => (
          <circle key={key} className="sketch-part" cx={x} cy={y} r={5} />
        ))}
      {spots
        .filter(([key]) => key === lit)
        .map(([key, x, y]) => (
          <circle key={key} className="sketch-spot" cx={x} cy={y} r={7} />
        ))}
      {lit === "stroke" && (
        <Dimension from={[76, 100]} to={[104, 100]} aside={-30} word="to lock" wordAt={[-16, -8]} />
      )}
      {lit === "swing" && <path className="sketch-lit" d="M70,112 A62,62 0 0 0 96,106 M70,50 L98,106" />}
      <text className="sketch-word" x={172} y={16}>
        ↑ front
      </text>
    </>
  );
}
