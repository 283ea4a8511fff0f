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
      {lit === "lipToLip" && <Dimension from={[40, 14]} to={[180, 14]} aside={-6} />}
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

export type TireSketchProps = {
  /** Key of the number the sketch is about. */
  lit: string;
};

const HALF = "M66,48 C44,44 40,14 66,8 L154,8 C180,14 176,44 154,48";
const LOWER_HALF = "M66,112 C44,116 40,146 66,152 L154,152 C180,146 176,116 154,112";
const DOTS = [
  [66, 48],
  [51, 36],
  [53, 18],
  [66, 8],
  [154, 8],
  [167, 18],
  [169, 36],
  [154, 48],
] as const;

/** A tire cut through the wheel's axis, standing on the floor. */
export function TireSketch({ lit }: TireSketchProps) {
  const isOnFloor = lit === "loadedRadius";
  return (
    <>
      <path className="sketch-axis" d="M20,80 L200,80" />
      <path className="sketch-part" d={HALF} />
      <path className="sketch-part" d={LOWER_HALF} />
      <path className="sketch-ink" d="M66,48 L66,54 L154,54 L154,48 M66,112 L66,106 L154,106 L154,112" />
      {isOnFloor && <path className="sketch-ink" d="M6,146 L214,146" />}
      {lit === "diameter" && <Dimension from={[154, 8]} to={[154, 152]} aside={-44} />}
      {(lit === "sectionWidth" || lit === "size") && <Dimension from={[49, 30]} to={[171, 30]} />}
      {lit === "shoulderDrop" && (
        <>
          <path className="sketch-axis" d="M40,4 L206,4" />
          <Dimension from={[168, 4]} to={[168, 17]} />
        </>
      )}
      {lit === "treadWidth" && <Dimension from={[66, 8]} to={[154, 8]} aside={18} />}
      {lit === "size" && (
        <Dimension from={[154, 54]} to={[154, 106]} aside={-30} word="rim" wordAt={[5, 4]} />
      )}
      {isOnFloor && <Dimension from={[110, 80]} to={[110, 146]} />}
      {lit === "profile" &&
        DOTS.map(([x, y]) => <circle key={x * 1000 + y} className="sketch-spot" cx={x} cy={y} r={4} />)}
      {lit === "size" && (
        <text className="sketch-word" x={78} y={24}>
          235, 10.50
        </text>
      )}
      {isOnFloor && (
        <text className="sketch-word" x={180} y={140}>
          floor
        </text>
      )}
    </>
  );
}

export type RotorSketchProps = {
  /** `diameter`, `thickness` or `inboard`. */
  lit: string;
};

/** Rotor and hub face from the front, outboard to the right. */
export function RotorSketch({ lit }: RotorSketchProps) {
  return (
    <>
      <path className="sketch-axis" d="M20,82 L206,82" />
      <rect className="sketch-part" x={84} y={16} width={18} height={132} />
      <path className="sketch-ink" d="M102,54 L150,54 L150,110 L102,110 M150,40 L150,124" />
      {lit === "diameter" && <Dimension from={[84, 16]} to={[84, 148]} aside={30} />}
      {lit === "thickness" && <Dimension from={[84, 148]} to={[102, 148]} aside={10} />}
      {lit === "inboard" && <Dimension from={[102, 124]} to={[150, 124]} aside={16} />}
      <text className="sketch-word" x={156} y={50}>
        hub face
      </text>
      <text className="sketch-word" x={30} y={28}>
        rotor
      </text>
    </>
  );
}

/** A round rod, cut across: its radius. */
export function RoundSketch() {
  return (
    <>
      <path className="sketch-ink" d="M14,52 L140,52 M14,112 L140,112" />
      <path className="sketch-axis" d="M6,82 L214,82" />
      <ellipse className="sketch-part" cx={140} cy={82} rx={18} ry={30} />
      <Dimension from={[140, 82]} to={[140, 52]} word="radius" wordAt={[24, 4]} />
    </>
  );
}
