import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import { memo } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { PlotSpec, Series } from "../../parts/plotNumbers.ts";
import { ticksOf, tickText, unitText } from "../../parts/plotNumbers.ts";
import { labelSpots } from "./labelSpots.ts";
import { plotRange } from "./plotRange.ts";

export const PLOT_BOX = { width: 360, height: 220, left: 46, right: 20, top: 10, bottom: 34 } as const;

/** The x scale of a plot. Of steering left lock stands at the left, as on the map: + is a left turn. */
export function plotX({ series, x }: PlotSpec) {
  const points = series[0]?.points ?? [];
  const ends = [points[0]?.x ?? 0, points.at(-1)?.x ?? 1];
  if (x.measure === "lock") ends.reverse();
  return scaleLinear(ends, [PLOT_BOX.left, PLOT_BOX.width - PLOT_BOX.right]).clamp(true);
}

export type PlotPictureProps = {
  spec: PlotSpec;
  format: LengthFormat;
};

/** Scales, levels and curves: all of a plot that stays when the pose moves. */
export const PlotPicture = memo(function PlotPicture({ spec, format }: PlotPictureProps) {
  const { width, height, left, right, top, bottom } = PLOT_BOX;
  const { low, high } = plotRange(spec);
  const x = plotX(spec);
  const [first, last] = x.domain() as [number, number];
  const y = scaleLinear([low, high], [height - bottom, top]);
  const draw = line<Series["points"][number]>()
    .defined((p) => p.y !== null)
    .x((p) => x(p.x))
    .y((p) => y(p.y as number));
  return (
    <>
      {ticksOf(low, high, 6, spec.y.measure, format.units).map((tick) => (
        <g key={tick}>
          <line
            className={Math.abs(tick) < 1e-9 ? "plot-zero" : "plot-grid"}
            x1={left}
            x2={width - right}
            y1={y(tick)}
            y2={y(tick)}
          />
          <text className="plot-tick" x={left - 6} y={y(tick) + 4} textAnchor="end">
            {tickText(tick, spec.y.measure, format)}
          </text>
        </g>
      ))}
      {ticksOf(Math.min(first, last), Math.max(first, last), 6, spec.x.measure, format.units).map((tick) => (
        <g key={tick}>
          <line className="plot-grid" x1={x(tick)} x2={x(tick)} y1={top} y2={height - bottom} />
          <text className="plot-tick" x={x(tick)} y={height - bottom + 15} textAnchor="middle">
            {tickText(tick, spec.x.measure, format)}
          </text>
        </g>
      ))}
      <text className="plot-name" x={width - right} y={height - 4} textAnchor="end">
        {spec.x.label}, {unitText(spec.x.measure, format)}
      </text>
      {spec.levels?.map(({ at: level, name }) =>
        level >= low && level <= high ? (
          <g key={name}>
            <line className="plot-level" x1={left} x2={width - right} y1={y(level)} y2={y(level)} />
            <text className="plot-level-name" x={left + 3} y={y(level) - 4}>
              {name}
            </text>
          </g>
        ) : null,
      )}
      {spec.series.map((series) => (
        <path
          key={series.name}
          className={`plot-curve plot-${series.line} ${series.isMain ? "plot-main" : ""}`}
          d={draw(series.points) ?? ""}
        />
      ))}
      {labelSpots(spec.series, x, y, { left, right: width - right, top, bottom: height - bottom }).map(
        (spot) => (
          <text key={spot.name} className="plot-label" x={spot.x} y={spot.y} textAnchor="middle">
            {spot.name}
          </text>
        ),
      )}
    </>
  );
});
