import type { LengthFormat } from "../../../units/formatLength.ts";
import { curveText, type PlotSpec, type Series, slopePer, slopeStep } from "../../parts/plotNumbers.ts";
import { CurveSample } from "./CurveMark.tsx";
import { readAt, slopeAt } from "./curveSlope.ts";
import { placeText } from "./placeText.ts";
import type { Span } from "./plotRange.ts";
import { BAND_WORDS, NO_VALUE, placeRoom, slopeRoom, valueRoom } from "./plotRoom.ts";

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

/**
 * The numbers under a plot: every curve's value and slope, of the pose shown or of the place that is read. Where there are several
 * curves each has its line, and all numbers have room for what they may get to: nothing moves while they change.
 */
export function PlotValues({ id, spec, at, isPose, band, format }: PlotValuesProps) {
  const { measure } = spec.y;
  const isMany = spec.series.length > 1;
  const per = spec.slope === undefined ? "" : `${spec.slope} ${slopePer(spec, format)}`;
  const now = isPose ? "now" : "at";
  const ending = isMany && per !== "" ? `, and ${per}:` : ":";
  return (
    <p id={id} className={isMany ? "plot-values plot-values-many" : "plot-values"}>
      <span className="plot-where plot-room" data-room={roomOf(placeRoom(spec, format), "now ", ending)}>
        {now} {placeText(spec, at, format)}
        {ending}
      </span>{" "}
      {spec.series.map((series, i) => {
        const value = readAt(series, at);
        const hasSlope = per !== "" && !isFlat(series);
        const slope = hasSlope ? slopeAt(spec, series, at) : null;
        const step = slope === null ? "" : slopeStep(slope, spec, format);
        const [before, after] = isMany ? ["", ""] : [`${spec.slope} `, ` ${slopePer(spec, format)}`];
        return (
          <span key={series.name} className="plot-value">
            {isMany && (
              <>
                <CurveSample of={series.of ?? i} line={series.line} isMain={series.isMain} />{" "}
                <span className="plot-value-name" title={series.name}>
                  {series.name}
                </span>{" "}
              </>
            )}
            <b className="plot-room" data-room={roomOf(valueRoom(spec, format))}>
              {value === null ? NO_VALUE : curveText(value, measure, format)}
            </b>{" "}
            {value !== null && <BandWord value={value} band={band} />}{" "}
            {(hasSlope || (isMany && per !== "")) && (
              <span
                className="plot-slope plot-room"
                data-room={roomOf(slopeRoom(spec, format), before, after)}
              >
                {step === "" ? "" : `${before}${step}${after}`}
              </span>
            )}
          </span>
        );
      })}
    </p>
  );
}

/** The texts, a line each, with what stands before and after them. */
function roomOf(texts: readonly string[], before = "", after = ""): string {
  return texts.map((text) => `${before}${text}${after}`).join("\n");
}

/** Whether a curve tells the same all along, as of what rides with the wheel: its slope is no news. */
function isFlat({ points }: Series): boolean {
  return points.length > 1 && points.every(({ y }) => y === points[0]!.y);
}

function BandWord({ value, band: { low, high } }: { value: number; band: Partial<Span> }) {
  if (low === undefined && high === undefined) return null;
  const isBelow = low !== undefined && value < low;
  const isAbove = high !== undefined && value > high;
  return (
    <span className="plot-in-band plot-room" data-room={roomOf(Object.values(BAND_WORDS))}>
      {BAND_WORDS[isBelow ? "below" : isAbove ? "above" : "in"]}
    </span>
  );
}
