import type { LengthFormat } from "../../../units/formatLength.ts";
import {
  curveText,
  type PlotSpec,
  plotOver,
  readText,
  type Series,
  slopeText,
} from "../../parts/plotNumbers.ts";
import { CurveSample } from "./CurveMark.tsx";
import { readAt, slopeAt } from "./curveSlope.ts";
import type { Span } from "./plotRange.ts";

export type PlotValuesProps = {
  id: string;
  spec: PlotSpec;
  at: number;
  /** The values are of the pose shown, not of a place being read. */
  isPose: boolean;
  /** What is wanted: a curve outside of it says so. */
  band: Partial<Span>;
  format: LengthFormat;
};

/** The numbers under a plot: every curve's value and slope, of the pose shown or of the place that is read. */
export function PlotValues({ id, spec, at, isPose, band, format }: PlotValuesProps) {
  const { measure } = spec.y;
  return (
    <p id={id} className="plot-values">
      <span className="plot-where">
        {isPose ? "now" : "at"} {placeText(spec, at, format)}:
      </span>{" "}
      {spec.series.map((series, i) => {
        const value = readAt(series, at);
        const slope = spec.slope === undefined || isFlat(series) ? null : slopeAt(spec, series, at);
        return (
          <span key={series.name} className="plot-value">
            {spec.series.length > 1 && (
              <>
                <CurveSample of={series.of ?? i} line={series.line} isMain={series.isMain} /> {
                  series.name
                }{" "}
              </>
            )}
            <b>{value === null ? "none here" : curveText(value, measure, format)}</b>
            {value !== null && <BandWord value={value} band={band} />}
            {slope !== null && (
              <span className="plot-slope">
                {" "}
                {spec.series.length > 1 ? "" : `${spec.slope} `}
                {slopeText(slope, spec, format)}
              </span>
            )}
          </span>
        );
      })}
    </p>
  );
}

/** Of the steering input. Nearer to the middle nobody holds a wheel. */
const STRAIGHT = 1e-3;

/** The place along a plot; a wheel that stands straight ahead is told so, whatever toe it has there. */
function placeText(spec: PlotSpec, at: number, format: LengthFormat): string {
  const input = spec.x.toInput?.(at) ?? at;
  if (plotOver(spec) === "steer" && Math.abs(input) < STRAIGHT) return "straight ahead";
  return readText(at, spec.x.measure, format);
}

/** Whether a curve tells the same all along, as of what rides with the wheel: its slope is no news. */
function isFlat({ points }: Series): boolean {
  return points.length > 1 && points.every(({ y }) => y === points[0]!.y);
}

function BandWord({ value, band: { low, high } }: { value: number; band: Partial<Span> }) {
  if (low === undefined && high === undefined) return null;
  const off =
    low !== undefined && value < low ? "below" : high !== undefined && value > high ? "above" : null;
  return <span className="plot-in-band"> {off === null ? "✓ in the band" : `✕ ${off} the band`}</span>;
}
