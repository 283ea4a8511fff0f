import { evenly } from "../../../studies/numeric/evenly.ts";
import { type WindowField, writtenField } from "../../../studies/window/windowField.ts";
import { decimalFormat, finestLength, lengthText, tellingFormat } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { alignmentPlot } from "../../clear/plots/alignmentPlots.ts";
import { LINES, type PlotSpec } from "../../parts/plotNumbers.ts";
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

/** How many values a fan may have: more curves nobody tells apart. */
export const FAN_COUNTS = { least: 2, most: 15 } as const;

/** How many values are asked for, as typed; null = no whole number that a fan may have. */
export function fanCount(text: string): number | null {
  const count = /^\s*\d+\s*$/.test(text) ? Number(text) : Number.NaN;
  return count >= FAN_COUNTS.least && count <= FAN_COUNTS.most ? count : null;
}

/** How far a fan's values are apart: `1° apart`, in decimals where that is no fraction of a tape. */
export function apartText(
  field: Pick<WindowField, "kind">,
  [from, to]: readonly [from: number, to: number],
  count: number,
  format: LengthFormat,
): string {
  const step = Math.abs(to - from) / (count - 1);
  const marks = step / finestLength(format);
  const isMarked = Math.abs(marks - Math.round(marks)) < 1e-6;
  return `${fieldEndText(field, step, isMarked ? format : decimalFormat(format))} apart`;
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
