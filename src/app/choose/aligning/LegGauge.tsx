export type LegGaugeProps = {
  /** Change of length, mm. */
  setting: number;
  least: number;
  most: number;
};

const WIDTH = 112;
const MARGIN = 8;

/** A threaded leg's room to be set, from shortest to longest: a tick where it was measured, a mark where it is set. */
export function LegGauge({ setting, least, most }: LegGaugeProps) {
  const x = (mm: number) => MARGIN + ((mm - least) / (most - least)) * (WIDTH - 2 * MARGIN);
  return (
    <svg className="leg-gauge" viewBox={`0 0 ${WIDTH} 30`} aria-hidden="true" focusable="false">
      <path className="dial-tick" d={`M${x(least)},9 V21 M${x(most)},9 V21 M${x(least)},15 H${x(most)}`} />
      <path className="shim-before" d={`M${x(0)},3 V27`} />
      <circle className="leg-mark" cx={x(setting)} cy={15} r={5} />
    </svg>
  );
}
