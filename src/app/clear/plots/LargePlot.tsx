import "./largePlot.css";
import { useId, useLayoutEffect, useRef } from "react";
import { createPortal } from "react-dom";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { Meaning } from "../../docs/Meaning.tsx";
import type { PlotSpec } from "../../parts/plotNumbers.ts";
import { printAlone } from "../../parts/printAlone.ts";
import { saveAs } from "../../parts/saveAs.ts";
import { BandForm } from "./BandForm.tsx";
import { PlotBoard } from "./PlotBoard.tsx";
import { PlottedOf } from "./PlottedOf.tsx";
import { type Zoom, zoomed } from "./plotFrame.ts";
import { type CurveRow, plotSvg } from "./plotSvg.ts";
import { plotsCsv } from "./plotsCsv.ts";

export type LargePlotProps = {
  spec: PlotSpec;
  /** Where the pose shown stands on the x scale. */
  at: number;
  format: LengthFormat;
  /** Puts the pose to an x. */
  onGo: (x: number) => void;
  zoom: Zoom | null;
  onZoom: (zoom: Zoom | null) => void;
  onClose: () => void;
};

/** px that it is wide on paper: between the margins of A4. */
const PAPER = 700;

/** One plot over the whole window, with all that can be done with it. */
export function LargePlot({ spec, at, format, onGo, zoom, onZoom, onClose }: LargePlotProps) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => dialog.current!.showModal(), []);
  const look = (factor: number) => onZoom(zoomed(spec, zoom, at, factor));
  const name = spec.id;
  return createPortal(
    <dialog ref={dialog} className="plot-large" aria-labelledby={`${id}-title`} onClose={onClose}>
      <header>
        <h2 id={`${id}-title`}>
          {spec.title} <small>{spec.note}</small>
        </h2>
        {spec.of !== undefined && <Meaning of={spec.of} />}
        <button type="button" className="button" onClick={() => dialog.current!.close()}>
          ✕ Close
        </button>
      </header>
      <div className="plot-large-tools">
        <button type="button" className="button" onClick={() => look(2)}>
          Zoom in
        </button>
        <button type="button" className="button" onClick={() => look(0.5)} disabled={zoom === null}>
          Zoom out
        </button>
        <button type="button" className="button" onClick={() => onZoom(null)} disabled={zoom === null}>
          All of it
        </button>
        <BandForm spec={spec} format={format} />
        <button
          type="button"
          className="button"
          onClick={() =>
            saveAs(
              `${name}.svg`,
              "image/svg+xml",
              plotSvg(svg.current!, spec.title, spec.note, curveRows(dialog.current!, spec)),
            )
          }
        >
          Save SVG
        </button>
        <button
          type="button"
          className="button"
          onClick={() => saveAs(`${name}.csv`, "text/csv", plotsCsv([spec], format.units))}
        >
          Save CSV
        </button>
        <button type="button" className="button" onClick={() => printAlone("plot")}>
          Print
        </button>
      </div>
      <PlottedOf />
      <PlotBoard
        spec={spec}
        at={at}
        format={format}
        labelledBy={`${id}-title`}
        paper={PAPER}
        heightFor={(width) => Math.round(Math.max(220, Math.min(0.62 * width, innerHeight - 250)))}
        zoom={zoom}
        onZoom={onZoom}
        onGo={onGo}
        svg={svg}
      />
      <p className="plot-large-help">
        Press in the plot to go to that pose; drag over it to look closer; arrow keys read it, + − 0 zoom,
        Shift with the arrows moves along.
      </p>
    </dialog>,
    document.body,
  );
}

/** The curves of a plot with their samples, as its list of values shows them; none where there is one curve. */
function curveRows(dialog: HTMLElement, { series }: PlotSpec): readonly CurveRow[] {
  const samples = [...dialog.querySelectorAll<SVGSVGElement>(".plot-values .plot-sample")];
  return samples.map((sample, i) => ({ name: series[i]?.name ?? "", sample }));
}
