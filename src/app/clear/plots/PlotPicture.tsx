import { memo, useId } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { PlotSpec, Series } from "../../parts/plotNumbers.ts";
import { unitText } from "../../parts/plotNumbers.ts";
import { scaleTicks, ticksAcross } from "../../parts/scaleTicks.ts";
import { CurveMark, lookClass } from "./CurveMark.tsx";
import { labelSpots, nameBox } from "./labelSpots.ts";
import { curvePath, type PlotFrame, scaleName } from "./plotFrame.ts";
import type { Span } from "./plotRange.ts";

export type PlotPictureProps = {
  spec: PlotSpec;
  frame: PlotFrame;
  /** What is wanted of the curves; an end that is left out is open. */
  band: Partial<Span>;
  format: LengthFormat;
};

/** px between two marks of the scale up, at least. */
const APART = 26;

/** Marks along one curve. */
const MARKS = 5;

/** Scales, levels, the band that is wanted, and curves: all of a plot that stays when the pose moves. */
export const PlotPicture = memo(function PlotPicture({ spec, frame, band, format }: PlotPictureProps) {
  const { box, x, y, across, up } = frame;
  const { width, height, left, right, top, bottom } = box;
  const clip = useId();
  const room = { left, right: width - right, top, bottom: height - bottom };
  const levels = (spec.levels ?? []).flatMap(({ at, name }) => {
    if (at < up.low || at > up.high) return [];
    // Under its line where the name of another stands right above it.
    const isUnder = spec.levels?.some((other) => isJustAbove(y(other.at), y(at)));
    return [{ name, line: y(at), left: left + 3, base: y(at) + (isUnder ? 12 : -4) }];
  });
  const drawn = {
    taken: levels.map(({ name, left: from, base }) => nameBox(name, from, base)),
    levels: [...levels.map(({ line }) => line), ...(up.low < 0 && up.high > 0 ? [y(0)] : [])],
  };
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
      {scaleTicks(up.low, up.high, (room.bottom - top) / APART, spec.y.measure, format).map(
        ({ at, text }) => (
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
        ),
      )}
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
      {levels.map(({ name, line }) => (
        <line key={name} className="plot-level" x1={left} x2={width - right} y1={line} y2={line} />
      ))}
      <g clipPath={`url(#${clip})`}>
        {spec.series.map((series, i) => (
          <g key={series.name}>
            <path
              className={`plot-curve plot-${series.line} ${series.isMain ? "plot-main" : ""} ${lookClass(series.of ?? i)}`}
              d={curvePath(series.points, frame)}
            />
            {spec.series.length > 1 &&
              markedPoints(series, across, i).map((p) => (
                <CurveMark key={p.x} of={series.of ?? i} x={x(p.x)} y={y(p.y as number)} />
              ))}
          </g>
        ))}
      </g>
      {levels.map(({ name, left: from, base }) => (
        <text key={name} className="plot-level-name" x={from} y={base}>
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

/** px. The height that the name of a level takes. */
const NAMED = 15;

/** Whether a level is drawn so little above another that both names have no room between them. */
function isJustAbove(one: number, other: number): boolean {
  return one < other && other - one < NAMED;
}

/** A few points of a curve that are in sight, each curve's at places of its own. */
function markedPoints({ points }: Series, across: Span, i: number): Series["points"] {
  const seen = points.filter(({ x, y }) => y !== null && x >= across.low && x <= across.high);
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
