import "./plotsPanel.css";
import { memo, useDeferredValue, useMemo, useRef, useState } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { PlotSpec } from "../../parts/plotNumbers.ts";
import { saveAs } from "../../parts/saveAs.ts";
import { StandingTag } from "../../parts/standing.tsx";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { alignmentPlots, type NamedTruck } from "./alignmentPlots.ts";
import { gapOverSteer, gapOverTravel } from "./gapPlots.ts";
import { Plot } from "./Plot.tsx";
import { plotsCsv } from "./plotsCsv.ts";
import { useIsSeen } from "./useIsSeen.ts";
import { usePrinting } from "./usePrinting.ts";

export type PlotsPanelProps = {
  truck: Truck;
  /** What can be laid over the truck shown. */
  variants: readonly NamedTruck[];
  format: LengthFormat;
};

/** Every plot, each linked to the pose: what the linkage does, and what nears the tire. */
export const PlotsPanel = memo(function PlotsPanel({ truck, variants, format }: PlotsPanelProps) {
  const section = useRef<HTMLElement>(null);
  const isSeen = useIsSeen(section);
  // A drag comes first: the plots follow when there is time, and not at all where nobody sees them.
  const isPrinting = usePrinting();
  const [travelNow, steerNow] = [
    useWorkbench((s) => (isSeen || isPrinting ? s.travel : 0)),
    useWorkbench((s) => (isSeen || isPrinting ? s.steer : 0)),
  ];
  const [travelLater, steerLater] = [useDeferredValue(travelNow), useDeferredValue(steerNow)];
  const [travel, steer] = isPrinting ? [travelNow, steerNow] : [travelLater, steerLater];
  const setPose = useWorkbench((s) => s.setPose);
  const [laid, setLaid] = useState(-1);
  const others = useMemo(() => variants.slice(laid, laid + 1).filter(() => laid >= 0), [variants, laid]);
  const ofTruck = useMemo(() => alignmentPlots(truck, others), [truck, others]);
  const plots = [gapOverSteer(truck, travel), gapOverTravel(truck, steer), ...ofTruck];
  const isOverSteer = (plot: PlotSpec) => plot.x.measure === "lock";
  return (
    <section className="plots" ref={section} aria-labelledby="plots-title">
      <header className="plots-head">
        <h2 id="plots-title" className="label">
          Plots: the blue line is the pose shown; press in a plot to go there
        </h2>
        <StandingTag />
        {variants.length > 0 && (
          <label>
            Lay over{" "}
            <select value={laid} onChange={(event) => setLaid(Number(event.target.value))}>
              <option value={-1}>nothing</option>
              {variants.map(({ name }, i) => (
                <option key={name} value={i}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        )}
        <button
          type="button"
          className="button"
          onClick={() => saveAs("plots.csv", "text/csv", plotsCsv(plots, truck.setup.units))}
        >
          Save these curves (CSV)
        </button>
      </header>
      <div className="plots-grid">
        {plots.map((plot) => (
          <Plot
            key={plot.id}
            spec={plot}
            at={isOverSteer(plot) ? steer : travel}
            format={format}
            onGo={(x) => (isOverSteer(plot) ? setPose(travel, x) : setPose(x, steer))}
          />
        ))}
      </div>
    </section>
  );
});
