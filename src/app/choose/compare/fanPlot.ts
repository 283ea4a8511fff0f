import { alignmentPlots } from "../../clear/plots/alignmentPlots.ts";
import type { PlotSpec, Series } from "../../parts/plotNumbers.ts";
import type { FanStep } from "./fan.ts";

/** Quantities a fan can be drawn for: plots over travel. */
export const FAN_PLOTS = [
  { id: "camber", name: "camber" },
  { id: "toe", name: "toe (bump steer)" },
  { id: "caster", name: "caster" },
  { id: "scrub", name: "scrub radius" },
  { id: "half-track", name: "half track" },
] as const;

const LINES: readonly Series["line"][] = ["solid", "dashed", "dotted"];

/** The plot of one quantity with a curve for each value of the fan that goes together; null = none does. */
export function fanPlot(steps: readonly FanStep[], plotId: string): PlotSpec | null {
  const made = steps.flatMap(({ text, truck }) => (truck ? [{ name: text, truck }] : []));
  const [first, ...others] = made;
  if (first === undefined) return null;
  const spec = alignmentPlots(first.truck, others).find(({ id }) => id === plotId);
  if (spec === undefined) return null;
  const series = spec.series.map((curve, i) => ({
    ...curve,
    name: made[i]?.name ?? curve.name,
    line: LINES[i % LINES.length]!,
    isMain: false,
  }));
  return { ...spec, id: `fan-${plotId}`, series };
}
