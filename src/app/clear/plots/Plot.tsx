import "./plot.css";
import { memo, useId, useState } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { PlotSpec } from "../../parts/plotNumbers.ts";
import { LargePlot } from "./LargePlot.tsx";
import { PlotBoard } from "./PlotBoard.tsx";
import type { Zoom } from "./plotFrame.ts";

export type PlotProps = {
  spec: PlotSpec;
  /** Where the pose shown stands on the x scale. */
  at: number;
  format: LengthFormat;
  /** Puts the pose to an x. */
  onGo: (x: number) => void;
  /** Drawn as low as it reads: beside fields every line counts. Default false. */
  isLow?: boolean;
  /** On paper beside another, three rows to a page. Default as on the screen. */
  isTiled?: boolean;
};

/** px, of a low one; on a phone, where values stand below it, those of one curve in fewer lines. */
const LOW = 156;
const LOWEST = { one: 172, many: 136 };
const PHONE = 900;

/** px on paper, of half a page's width: three rows and the heading stand on Letter and A4. */
const TILE = { width: 330, height: 158 };

/** A plot as a drafter would ink it, with a larger one behind a press. */
export const Plot = memo(function Plot({
  spec,
  at,
  format,
  onGo,
  isLow = false,
  isTiled = false,
}: PlotProps) {
  const id = useId();
  const [zoom, setZoom] = useState<Zoom | null>(null);
  const [isLarge, setLarge] = useState(false);
  return (
    <figure className="plot">
      <figcaption>
        <span className="plot-title" id={`${id}-title`}>
          <strong>{spec.title}</strong> <small>{isLow ? spec.stands : spec.note}</small>
        </span>
        {zoom && (
          <button type="button" className="plot-tool" onClick={() => setZoom(null)}>
            All of it
          </button>
        )}
        <button
          type="button"
          className="plot-tool plot-enlarge"
          aria-label={`${spec.title}: larger`}
          title="Larger: zoom, wanted band, save, print"
          onClick={() => setLarge(true)}
        >
          <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
            <path d="M9.5 2H14v4.5M14 2 9 7M6.5 14H2V9.5M2 14l5-5" />
          </svg>
        </button>
      </figcaption>
      <PlotBoard
        spec={spec}
        at={at}
        format={format}
        labelledBy={`${id}-title`}
        {...(isTiled ? { paper: TILE.width } : {})}
        heightFor={(width, isPrinting) => {
          if (isTiled && isPrinting) return TILE.height;
          if (isLow && innerWidth <= PHONE) return spec.series.length > 1 ? LOWEST.many : LOWEST.one;
          if (isLow) return LOW;
          return Math.round(Math.min(260, Math.max(190, 0.58 * width)));
        }}
        zoom={zoom}
        onZoom={setZoom}
        onGo={onGo}
      />
      {isLarge && (
        <LargePlot
          spec={spec}
          at={at}
          format={format}
          onGo={onGo}
          zoom={zoom}
          onZoom={setZoom}
          onClose={() => setLarge(false)}
        />
      )}
    </figure>
  );
});
