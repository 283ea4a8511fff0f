import { Dimension } from "./Dimension.tsx";

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
