import { evenly } from "../../../studies/numeric/evenly.ts";
import { type WindowField, writtenField } from "../../../studies/window/windowField.ts";
import { lengthText, tellingFormat } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { alignmentPlot } from "../../clear/plots/alignmentPlots.ts";
import type { PlotSpec, Series } from "../../parts/plotNumbers.ts";
import type { Truck } from "../../state/truck.ts";
import { fieldEndText } from "./fieldEnds.ts";

/** One value of a fan. */
export interface FanStep {
  /** As it is read. */
  readonly text: string;
  /** What is shown with the field at this value, as a document of its own without variants. */
  readonly document: unknown;
  /** null = it does not go together. */
  readonly truck: Truck | null;
}

/** A field at evenly spaced values, ends included, in decimals where a tape's fractions would read alike. */
export function fanSteps(
  document: unknown,
  field: WindowField,
  ends: readonly [from: number, to: number],
  count: number,
  shownIn: LengthFormat,
  truckOf: (document: unknown) => Truck | null,
): readonly FanStep[] {
  const values = [...evenly(...ends, count)];
  const format = field.kind === "angle" ? shownIn : tellingFormat(values, lengthText, shownIn);
  return values.map((value) => {
    const made = writtenField(document, field, value);
    return { text: fieldEndText(field, value, format), document: made, truck: truckOf(made) };
  });
}

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
