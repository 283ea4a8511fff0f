export type EccentricDialProps = {
  /** From the middle, mm. */
  setting: number;
  asBolted: number;
  /** How far it reaches to either side, mm. */
  reach: number;
};

const RADIUS = 24;
const CENTER = 32;

/** Where an eccentric of that reach points: it moves its pivot by reach × sin of the turn from the middle, which is up. */
function tip(setting: number, reach: number, radius: number): string {
  const turn = Math.asin(Math.min(1, Math.max(-1, setting / reach)));
  return `${CENTER + radius * Math.sin(turn)},${CENTER - radius * Math.cos(turn)}`;
}

/** The head of an eccentric bolt: its mark as set, and dashed as bolted on; both ends and the middle ticked. */
export function EccentricDial({ setting, asBolted, reach }: EccentricDialProps) {
  return (
    <svg className="eccentric-dial" viewBox="0 0 64 64" aria-hidden="true" focusable="false">
      <circle className="shim-a" cx={CENTER} cy={CENTER} r={RADIUS} />
      <path className="dial-tick" d={`M${CENTER},2 V8 M2,${CENTER} H8 M62,${CENTER} H56`} />
      <path className="shim-before" d={`M${CENTER},${CENTER} L${tip(asBolted, reach, RADIUS)}`} />
      <path className="dial-mark" d={`M${CENTER},${CENTER} L${tip(setting, reach, RADIUS)}`} />
      <circle className="shim-frame" cx={CENTER} cy={CENTER} r={5} />
    </svg>
  );
}
