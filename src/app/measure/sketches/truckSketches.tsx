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

export type BoxSketchProps = {
  /** `min` or `max`. */
  lit: string;
};

/** A box along the axes, x forward to the left and toward the eye: its lowest and its highest corner. */
export function BoxSketch({ lit }: BoxSketchProps) {
  return (
    <>
      <path
        className="sketch-ink"
        d="M60,70 L120,90 L120,140 L60,120 Z M120,90 L180,64 L180,114 L120,140 M60,70 L120,44 L180,64"
      />
      <path className="sketch-axis" d="M60,120 L120,94 L180,114 M120,94 L120,44" />
      <circle className="sketch-spot" cx={lit === "min" ? 180 : 60} cy={lit === "min" ? 114 : 70} r={7} />
      <path className="sketch-thin" d="M30,140 L6,132 M30,140 L52,131 M30,140 L30,116" />
      <text className="sketch-word" x={0} y={126}>
        x
      </text>
      <text className="sketch-word" x={54} y={134}>
        y
      </text>
      <text className="sketch-word" x={26} y={112}>
        z
      </text>
    </>
  );
}
