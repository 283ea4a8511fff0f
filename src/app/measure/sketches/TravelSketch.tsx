import { Dimension } from "./Dimension.tsx";

export type TravelSketchProps = {
  /** `bump`, `droop` or `travel`. */
  lit: string;
};

/** A wheel in its well: up toward the body is bump, down is droop. */
export function TravelSketch({ lit }: TravelSketchProps) {
  const isUp = lit !== "droop";
  return (
    <>
      <path className="sketch-ink" d="M8,104 L30,104 C34,30 162,30 166,104 L212,104" />
      <circle className="sketch-faint" cx={98} cy={isUp ? 80 : 124} r={46} />
      <circle className="sketch-part" cx={98} cy={102} r={46} />
      <circle className="sketch-ink" cx={98} cy={102} r={3} />
      <Dimension
        from={[98, 102]}
        to={[98, isUp ? 80 : 124]}
        aside={isUp ? 62 : -62}
        word={isUp ? "bump +" : "droop −"}
        wordAt={[6, 4]}
      />
      <text className="sketch-word" x={6} y={98}>
        body
      </text>
    </>
  );
}
