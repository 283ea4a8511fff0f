import { alignmentPlot } from "../../clear/plots/alignmentPlots.ts";
import type { PlotSpec, Series } from "../../parts/plotNumbers.ts";
import type { FanStep } from "./fan.ts";

const LINES: readonly Series["line"][] = ["solid", "dashed", "dotted"];

/** The plot of one quantity with a curve for each value of the fan that goes together; null = none does. */
export function fanPlot(steps: readonly FanStep[], plotId: string): PlotSpec | null {
  const specs = steps.flatMap(({ text, truck }) => {
    const spec = truck && alignmentPlot(plotId, truck, []);
    return spec === null ? [] : [{ text, spec }];
  });
  if (specs[0] === undefined) return null;
  const series = specs.map(({ text, spec }, i) => ({
    ...spec.series[0]!,
    name: text,
    line: LINES[i % LINES.length]!,
    isMain: false,
    of: i,
  }));
  return { ...specs[0].spec, id: `fan-${plotId}`, series };
}
