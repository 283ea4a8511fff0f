import "./plot.css";
import { type KeyboardEvent, type PointerEvent, useId, useRef, useState } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { type PlotSpec, readText } from "../../parts/plotNumbers.ts";
import { PLOT_BOX, PlotPicture, plotX } from "./PlotPicture.tsx";
import { PlotValues } from "./PlotValues.tsx";
import { nearestIndex } from "./valueAt.ts";

export type PlotProps = {
  spec: PlotSpec;
  /** Where the pose shown stands on the x scale. */
  at: number;
  format: LengthFormat;
  /** Puts the pose to an x. */
  onGo: (x: number) => void;
};

/** A plot as a drafter would ink it: read it under the pointer or with the arrow keys, press to go to that pose. */
export function Plot({ spec, at, format, onGo }: PlotProps) {
  const id = useId();
  const svg = useRef<SVGSVGElement>(null);
  const [read, setRead] = useState<number | null>(null);
  const x = plotX(spec);
  const shownAt = read ?? at;
  const domain = x.domain();

  const xUnder = ({ clientX }: { readonly clientX: number }): number => {
    const box = svg.current!.getBoundingClientRect();
    return x.invert(((clientX - box.left) / box.width) * PLOT_BOX.width);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const way = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (way !== undefined) {
      const xs = spec.series[0]?.points.map((p) => p.x) ?? [];
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
        aria-valuemin={Math.min(...domain)}
        aria-valuemax={Math.max(...domain)}
        aria-valuenow={shownAt}
        aria-valuetext={readText(shownAt, spec.x.measure, format)}
        onKeyDown={onKeyDown}
        onBlur={() => setRead(null)}
      >
        <svg
          ref={svg}
          viewBox={`0 0 ${PLOT_BOX.width} ${PLOT_BOX.height}`}
          aria-hidden="true"
          onPointerMove={(event: PointerEvent) => setRead(xUnder(event))}
          onPointerLeave={() => setRead(null)}
          onClick={(event) => onGo(xUnder(event))}
        >
          <PlotPicture spec={spec} format={format} />
          <line
            className={read === null ? "plot-pose" : "plot-read"}
            x1={x(shownAt)}
            x2={x(shownAt)}
            y1={PLOT_BOX.top}
            y2={PLOT_BOX.height - PLOT_BOX.bottom}
          />
        </svg>
      </div>
      <PlotValues id={`${id}-values`} spec={spec} at={shownAt} isPose={read === null} format={format} />
    </figure>
  );
}
