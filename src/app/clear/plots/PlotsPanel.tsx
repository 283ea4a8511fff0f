import "./plotsPanel.css";
import { memo } from "react";
import { printAlone } from "../../parts/printAlone.ts";
import { reportFile, stemOf } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { StandingTag } from "../../parts/standing.tsx";
import type { Truck } from "../../state/truck.ts";
import { useFormat } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { useLaid } from "./laidOver.ts";
import { LayOver, SteeringScale, WhichPlots } from "./PlotMenus.tsx";
import { PlotTile } from "./PlotTile.tsx";
import { PlottedOf } from "./PlottedOf.tsx";
import { usePlotChoice } from "./plotChoice.ts";
import { plotNames, plotSpec } from "./plotSpecs.ts";
import { plotsCsv } from "./plotsCsv.ts";

/** Every plot, each linked to the pose: what the linkage does, and what nears the tire. */
export const PlotsPanel = memo(function PlotsPanel({ truck }: { truck: Truck }) {
  const format = useFormat();
  const laid = useLaid(truck);
  const hidden = usePlotChoice((s) => s.hidden);
  const scale = usePlotChoice((s) => s.scale);
  const ids = plotNames(truck).flatMap(({ id }) => (hidden.includes(id) ? [] : [id]));
  const curves = () => {
    const { travel, steer } = workbench.getState();
    const ask = { ...laid, scale, travel, steer, isFine: true };
    const specs = ids.flatMap((id) => plotSpec(id, ask) ?? []);
    return plotsCsv(specs, truck.setup.units);
  };
  return (
    <section className="plots" aria-labelledby="plots-title">
      <header className="plots-head">
        <h2 id="plots-title" className="label">
          Plots: the blue line is the pose shown; press in a plot to go there, drag over it to look closer
        </h2>
        <StandingTag />
        <div className="plots-tools">
          <WhichPlots truck={truck} of="panel" />
          <LayOver laid={laid} />
          <SteeringScale />
          <SaveMenu
            of="the curves"
            isLeft={false}
            files={[
              {
                name: "These curves (CSV)",
                file: `${stemOf(truck)}-curves.csv`,
                type: "text/csv",
                make: curves,
              },
              reportFile(truck, { of: "sweep csv" }, "The sweep and each part’s worst pose, a table"),
              reportFile(truck, { of: "sweep" }, "The sweep and each part’s worst pose"),
            ]}
          />
          <button type="button" className="button" onClick={() => printAlone("plots")}>
            Print
          </button>
        </div>
      </header>
      <PlottedOf />
      <div className="plots-grid">
        {ids.map((id) => (
          <PlotTile key={id} id={id} laid={laid} scale={scale} format={format} />
        ))}
      </div>
    </section>
  );
});
