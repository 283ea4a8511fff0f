import "./curveDock.css";
import { memo, type ReactNode } from "react";
import type { LengthFormat } from "../../../units/formatLength.ts";
import type { Truck } from "../../state/truck.ts";
import type { NamedTruck } from "./alignmentPlots.ts";
import { useLaidOver } from "./laidOver.ts";
import { LayOver, SteeringScale, WhichPlots } from "./PlotMenus.tsx";
import { PlotTile } from "./PlotTile.tsx";
import { choosePlots, usePlotChoice } from "./plotChoice.ts";
import { plotNames } from "./plotSpecs.ts";

export type CurveDockProps = {
  truck: Truck;
  /** What curves out of sight are of: that truck, or the one before it while fields change. */
  rested: Truck;
  /** What can be laid over the truck shown. */
  variants: readonly NamedTruck[];
  format: LengthFormat;
  isOpen: boolean;
  /** The answer in few words, where it is out of sight while fields change. */
  children: ReactNode;
};

/** Any plots, along the foot of the window: they stay in view while fields change, and follow. */
export const CurveDock = memo(function CurveDock({
  truck,
  rested,
  variants,
  format,
  isOpen,
  children,
}: CurveDockProps) {
  const others = useLaidOver(variants);
  const docked = usePlotChoice((s) => s.docked);
  const scale = usePlotChoice((s) => s.scale);
  const ids = plotNames(truck).flatMap(({ id }) => (docked.includes(id) ? [id] : []));
  return (
    <section className="curve-dock" aria-label="Curves beside the fields">
      <div className="curve-dock-bar">
        <button
          type="button"
          className="button"
          aria-expanded={isOpen}
          onClick={() => choosePlots({ isDockOpen: !isOpen })}
        >
          {isOpen ? "▾" : "▴"} Curves
        </button>
        {isOpen && (
          <>
            <WhichPlots truck={truck} of="dock" />
            <LayOver variants={variants} />
            <SteeringScale />
          </>
        )}
        {children}
      </div>
      {isOpen && (
        <div className="curve-dock-plots">
          {ids.length === 0 && <p>No curve is chosen: choose some under “Which curves”.</p>}
          {ids.map((id) => (
            <PlotTile
              key={id}
              id={id}
              truck={truck}
              rested={rested}
              others={others}
              scale={scale}
              format={format}
              isLow
            />
          ))}
        </div>
      )}
    </section>
  );
});
