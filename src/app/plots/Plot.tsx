import "./plot.css";
import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import { type KeyboardEvent, type PointerEvent, useId, useRef, useState } from "react";
import type { LengthFormat } from "../../units/formatLength.ts";
import { labelSpots } from "./labelSpots.ts";
import { nearestIndex } from "./nearestIndex.ts";
import { PlotValues } from "./PlotValues.tsx";
import { plotRange } from "./plotRange.ts";
import type { PlotSpec, Series } from "./plotTypes.ts";
import { ticksOf } from "./ticks.ts";
import { readText, tickText, unitText } from "./toRead.ts";

export type PlotProps = {
  spec: PlotSpec;
  /** Where the pose shown stands on the x scale. */
  at: number;
  format: LengthFormat;
  /** Puts the pose to an x. */
  onGo: (x: number) => void;
};

const WIDTH = 360;
const HEIGHT = 220;
const EDGE = { left: 46, right: 20, top: 10, bottom: 34 } as const;

/** A plot as a drafter would ink it: read it under the pointer or with the arrow keys, press to go to that pose. */
export function Plot({ spec, at, format, onGo }: PlotProps) {
  const id = useId();
  const svg = useRef<SVGSVGElement>(null);
  const [read, setRead] = useState<number | null>(null);
  const xs = spec.series[0]?.points.map((p) => p.x) ?? [];
  const { low, high } = plotRange(spec);
  const first = xs[0] ?? 0;
  const last = xs.at(-1) ?? 1;
  // Left lock stands at the left, as on the map: + is a left turn.
  const ends = spec.x.measure === "lock" ? [last, first] : [first, last];
  const x = scaleLinear(ends, [EDGE.left, WIDTH - EDGE.right]);
  const y = scaleLinear([low, high], [HEIGHT - EDGE.bottom, EDGE.top]);
  const xTicks = ticksOf(first, last, 6, spec.x.measure, format.units);
  const yTicks = ticksOf(low, high, 6, spec.y.measure, format.units);
  const shownAt = read ?? at;
  const draw = line<Series["points"][number]>()
    .defined((p) => p.y !== null)
    .x((p) => x(p.x))
    .y((p) => y(p.y as number));

  const xUnder = (event: PointerEvent<SVGSVGElement>): number => {
    const box = svg.current!.getBoundingClientRect();
    return Math.min(last, Math.max(first, x.invert(((event.clientX - box.left) / box.width) * WIDTH)));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const way = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (way !== undefined) {
      const next = nearestIndex(xs, shownAt) + (spec.x.measure === "lock" ? -way : way);
      setRead(xs[Math.min(xs.length - 1, Math.max(0, next))] ?? null);
    } else if (event.key === "Enter" && read !== null) onGo(read);
    else if (event.key === "Escape") setRead(null);
    else return;
    event.preventDefault();
  };

  return (
    <figure className="plot">
      <figcaption id={`${id}-title`}>
        <strong>{spec.title}</strong> <small>{spec.note}</small>
      </figcaption>
      <div
        className="plot-board"
        role="slider"
        tabIndex={0}
        aria-labelledby={`${id}-title`}
        aria-describedby={`${id}-values`}
        aria-valuemin={first}
        aria-valuemax={last}
        aria-valuenow={shownAt}
        aria-valuetext={readText(shownAt, spec.x.measure, format)}
        onKeyDown={onKeyDown}
        onBlur={() => setRead(null)}
      >
        <svg
          ref={svg}
          viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
          aria-hidden="true"
          onPointerMove={(event) => setRead(xUnder(event))}
          onPointerLeave={() => setRead(null)}
          onClick={(event) => onGo(xUnder(event as unknown as PointerEvent<SVGSVGElement>))}
        >
          {yTicks.map((tick) => (
            <g key={tick}>
              <line
                className={Math.abs(tick) < 1e-9 ? "plot-zero" : "plot-grid"}
                x1={EDGE.left}
                x2={WIDTH - EDGE.right}
                y1={y(tick)}
                y2={y(tick)}
              />
              <text className="plot-tick" x={EDGE.left - 6} y={y(tick) + 4} textAnchor="end">
                {tickText(tick, spec.y.measure, format)}
              </text>
            </g>
          ))}
          {xTicks.map((tick) => (
            <g key={tick}>
              <line className="plot-grid" x1={x(tick)} x2={x(tick)} y1={EDGE.top} y2={HEIGHT - EDGE.bottom} />
              <text className="plot-tick" x={x(tick)} y={HEIGHT - EDGE.bottom + 15} textAnchor="middle">
                {tickText(tick, spec.x.measure, format)}
              </text>
            </g>
          ))}
          <text className="plot-name" x={WIDTH - EDGE.right} y={HEIGHT - 4} textAnchor="end">
            {spec.x.label}, {unitText(spec.x.measure, format)}
          </text>
          {spec.levels?.map(({ at: level, name }) =>
            level >= low && level <= high ? (
              <g key={name}>
                <line
                  className="plot-level"
                  x1={EDGE.left}
                  x2={WIDTH - EDGE.right}
                  y1={y(level)}
                  y2={y(level)}
                />
                <text
                  className="plot-level-name"
                  x={WIDTH - EDGE.right - 2}
                  y={y(level) - 4}
                  textAnchor="end"
                >
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
          {labelSpots(spec.series, x, y, { top: EDGE.top + 8, bottom: HEIGHT - EDGE.bottom - 4 }).map(
            (spot) => (
              <text key={spot.name} className="plot-label" x={spot.x} y={spot.y} textAnchor={spot.anchor}>
                {spot.name}
              </text>
            ),
          )}
          <line
            className={read === null ? "plot-pose" : "plot-read"}
            x1={x(shownAt)}
            x2={x(shownAt)}
            y1={EDGE.top}
            y2={HEIGHT - EDGE.bottom}
          />
        </svg>
      </div>
      <PlotValues id={`${id}-values`} spec={spec} at={shownAt} isPose={read === null} format={format} />
    </figure>
  );
}
