import { memo, useId } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { Measure, PlotSpec, Series } from "../../parts/plotNumbers.ts";
import { unitText } from "../../parts/plotNumbers.ts";
import { scaleTicks, type Tick, ticksAcross } from "../../parts/scaleTicks.ts";
import { CurveMark, lookClass } from "./CurveMark.tsx";
import { labelSpots } from "./labelSpots.ts";
import { levelNames } from "./levelNames.ts";
import { curvePath, type PlotFrame, scaleName } from "./plotFrame.ts";
import type { Span } from "./plotRange.ts";

export type PlotPictureProps = {
  spec: PlotSpec;
  frame: PlotFrame;
  /** What is wanted of the curves; an end that is left out is open. */
  band: Partial<Span>;
  format: LengthFormat;
};

/** px between two marks of the scale up, at the very least and about; of a high plot, which has more than enough of them. */
const LEAST_APART = 14;
const APART = 19;
const APART_HIGH = 26;
/** Marks that a plot may have the closer ones up to. */
const ENOUGH = 7;

/** Marks along one curve. */
const MARKS = 5;

/** Scales, levels, the band that is wanted, and curves: all of a plot that stays when the pose moves. */
export const PlotPicture = memo(function PlotPicture({ spec, frame, band, format }: PlotPictureProps) {
  const { box, x, y, across, up } = frame;
  const { width, height, left, right, top, bottom } = box;
  const clip = useId();
  const room = { left, right: width - right, top, bottom: height - bottom };
  const levels = (spec.levels ?? []).filter(({ at }) => at >= up.low && at <= up.high);
  const named = levelNames(levels, spec.series, frame);
  const drawn = {
    taken: named.map(({ box: of }) => of),
    levels: [...levels.map(({ at }) => y(at)), ...(up.low < 0 && up.high > 0 ? [y(0)] : [])],
  };
  const high = room.bottom - top;
  return (
    <>
      <clipPath id={clip}>
        <rect
          x={left}
          y={top}
          width={Math.max(0, room.right - left)}
          height={Math.max(0, room.bottom - top)}
        />
      </clipPath>
      <Band band={band} frame={frame} />
      {ticksUp(up, high, spec.y.measure, format).map(({ at, text }) => (
        <g key={at}>
          <line
            className={Math.abs(at) < 1e-9 ? "plot-zero" : "plot-grid"}
            x1={left}
            x2={width - right}
            y1={y(at)}
            y2={y(at)}
          />
          <text className="plot-tick" x={left - 6} y={y(at) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {ticksAcross(across.low, across.high, room.right - left, spec.x.measure, format).map(({ at, text }) => (
        <g key={at}>
          <line className="plot-grid" x1={x(at)} x2={x(at)} y1={top} y2={height - bottom} />
          <text className="plot-tick" x={x(at)} y={height - 21} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <text className="plot-name" x={4} y={12}>
        {spec.y.label}, {unitText(spec.y.measure, format)}
      </text>
      <text className="plot-name" x={width - right} y={height - 5} textAnchor="end">
        {scaleName(spec.x, unitText(spec.x.measure, format), width - right - 4)}
      </text>
      {levels.map(({ name, at }) => (
        <line key={name} className="plot-level" x1={left} x2={width - right} y1={y(at)} y2={y(at)} />
      ))}
      <g clipPath={`url(#${clip})`}>
        {spec.series.map((series, i) => (
          <g key={series.name}>
            <path
              className={`plot-curve plot-${series.line} ${series.isMain ? "plot-main" : ""} ${lookClass(series.of ?? i)}`}
              d={curvePath(series.points, frame)}
            />
            {spec.series.length > 1 &&
              marksOf(series, frame, i).map((at) => (
                <CurveMark key={at.x} of={series.of ?? i} x={at.x} y={at.y} />
              ))}
          </g>
        ))}
      </g>
      {named.map(({ name, box: of, base }) => (
        <text key={name} className="plot-level-name" x={of.left} y={base}>
          {name}
        </text>
      ))}
      {labelSpots(spec.series, x, y, room, drawn).map((spot) => (
        <text
          key={spot.name}
          className={`plot-label ${lookClass(spot.of)}`}
          x={spot.x}
          y={spot.y}
          textAnchor="middle"
        >
          {spot.name}
        </text>
      ))}
    </>
  );
});

/** Round marks of a scale up, `high` px high. */
function ticksUp({ low, high: to }: Span, high: number, measure: Measure, format: LengthFormat): Tick[] {
  for (let count = Math.min(high / APART, Math.max(ENOUGH, high / APART_HIGH)); ; count *= 0.8) {
    const ticks = scaleTicks(low, to, count, measure, format);
    const [first, second] = ticks;
    if (first === undefined || second === undefined) return ticks;
    if ((high * (second.at - first.at)) / (to - low) >= LEAST_APART) return ticks;
  }
}

/** px that a mark stands off the frame, so that it is whole. */
const OFF_FRAME = 6;

/** Where the marks of a curve stand: a few of its points that are in sight, each curve's at places of its own. */
function marksOf({ points }: Series, { box, x, y }: PlotFrame, i: number) {
  const isOff = (at: number, from: number, to: number) => at < from + OFF_FRAME || at > to - OFF_FRAME;
  const seen = points.flatMap((point) => {
    if (point.y === null) return [];
    const at = { x: x.free(point.x), y: y(point.y) };
    return isOff(at.x, box.left, box.width - box.right) || isOff(at.y, box.top, box.height - box.bottom)
      ? []
      : [at];
  });
  const step = Math.max(1, Math.floor(seen.length / MARKS));
  const first = Math.floor(step * (0.25 + 0.17 * (i % 5)));
  return seen.filter((_, k) => k >= first && (k - first) % step === 0);
}

function Band({ band, frame }: { band: Partial<Span>; frame: PlotFrame }) {
  const hatch = useId();
  const { box, y, up } = frame;
  if (band.low === undefined && band.high === undefined) return null;
  const [low, high] = [Math.max(band.low ?? up.low, up.low), Math.min(band.high ?? up.high, up.high)];
  if (!(low < high)) return null;
  const [x1, x2] = [box.left, box.width - box.right];
  return (
    <g>
      <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="plot-hatch" x1="0" x2="0" y1="0" y2="7" />
      </pattern>
      <rect fill={`url(#${hatch})`} x={x1} width={x2 - x1} y={y(high)} height={y(low) - y(high)} />
      {[band.low, band.high].map((end, i) =>
        end !== undefined && end >= up.low && end <= up.high ? (
          // biome-ignore lint/suspicious/noArrayIndexKey: the lower end and the upper one
          <line key={i} className="plot-band-edge" x1={x1} x2={x2} y1={y(end)} y2={y(end)} />
        ) : null,
      )}
      <text className="plot-band-name" x={x2 - 4} y={y(high) + 12} textAnchor="end">
        wanted
      </text>
    </g>
  );
}
