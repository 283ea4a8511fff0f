import type { PlotSpec } from "../../parts/plotNumbers.ts";
import type { Truck } from "../../state/truck.ts";
import { alignmentPlot, kindsOf, type NamedTruck } from "./alignmentPlots.ts";
import { gapOverSteer, gapOverTravel } from "./gapPlots.ts";
import type { SteerScale } from "./plotAxes.ts";
import { ROLL_KINDS, rollPlots } from "./rollPlots.ts";

/** Every plot of the page by its id, with what the truck says enough for. */
export function plotNames(truck: Truck): readonly { readonly id: string; readonly title: string }[] {
  return [
    { id: "gap-steer", title: "Gap over steering at this height" },
    { id: "gap-travel", title: "Gap over height at this steering" },
    ...kindsOf(truck),
    ...ROLL_KINDS,
  ].map(({ id, title }) => ({ id, title }));
}

/** What a plot is drawn of. */
export interface PlotAsk {
  readonly truck: Truck;
  /** Laid over it. */
  readonly others: readonly NamedTruck[];
  readonly scale: SteerScale;
  /** Of the pose shown: mm, −1 … +1. Some plots are cuts at it. */
  readonly travel: number;
  readonly steer: number;
  /** As finely as its numbers are known, which no picture shows and takes longer. Default false. */
  readonly isFine?: boolean;
}

/** One plot; null where the truck has no such curve. */
export function plotSpec(id: string, ask: PlotAsk): PlotSpec | null {
  const { truck, others, scale, travel, steer, isFine } = ask;
  if (id === "gap-steer") return gapOverSteer(truck, travel, others, scale, isFine);
  if (id === "gap-travel") return gapOverTravel(truck, steer, others, isFine);
  if (ROLL_KINDS.some((kind) => kind.id === id))
    return rollPlots(truck, travel, others).find((plot) => plot.id === id) ?? null;
  return alignmentPlot(id, truck, others, scale);
}
