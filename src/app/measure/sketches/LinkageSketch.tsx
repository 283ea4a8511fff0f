import { Dimension } from "./Dimension.tsx";

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
