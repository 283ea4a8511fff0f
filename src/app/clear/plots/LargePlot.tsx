import "./largePlot.css";
import { type RefObject, useId, useLayoutEffect, useRef, useState } from "react";
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

/** px of a drawing, at least: in a window too low for it the rest is scrolled to. */
const LEAST = 220;

/** Its height beside its width, at most. */
const STEEP = 0.62;

/** px that a dialog's drawing may be high so that all else of it is in sight; what stands around it tells. */
function useRoom(dialog: RefObject<HTMLDialogElement | null>): number {
  const [room, setRoom] = useState(() => innerHeight - 250);
  useLayoutEffect(() => {
    const box = dialog.current!;
    const board = box.querySelector(".plot-board")!;
    const measure = () => {
      const most = Number.parseFloat(getComputedStyle(box).maxHeight) || innerHeight;
      const border = box.offsetHeight - box.clientHeight;
      setRoom(Math.floor(most - border - (box.scrollHeight - board.getBoundingClientRect().height)) - 1);
    };
    // Of the drawing itself nothing is asked: it is what follows.
    const observer = new ResizeObserver(measure);
    for (const child of box.children) if (child !== board) observer.observe(child);
    addEventListener("resize", measure);
    measure();
    return () => {
      observer.disconnect();
      removeEventListener("resize", measure);
    };
  }, [dialog]);
  return room;
}

/** One plot over the whole window, with all that can be done with it. */
export function LargePlot({ spec, at, format, onGo, zoom, onZoom, onClose }: LargePlotProps) {
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  useLayoutEffect(() => dialog.current!.showModal(), []);
  const room = useRoom(dialog);
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
        heightFor={(width, isPrinting) =>
          Math.round(isPrinting ? STEEP * width : Math.max(LEAST, Math.min(STEEP * width, room)))
        }
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
