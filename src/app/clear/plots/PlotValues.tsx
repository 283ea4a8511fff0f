import type { LengthFormat } from "../../../units/formatLength.ts";
import type { PlotSpec } from "../../parts/plotNumbers.ts";
import { readText } from "../../parts/plotNumbers.ts";
import { valueAt } from "./valueAt.ts";

export type PlotValuesProps = {
  id: string;
  spec: PlotSpec;
  at: number;
  /** The values are of the pose shown, not of a place being read. */
  isPose: boolean;
  format: LengthFormat;
};

/** The numbers under a plot: of the pose shown, or of the place under the pointer. */
export function PlotValues({ id, spec, at, isPose, format }: PlotValuesProps) {
  const where = readText(at, spec.x.measure, format);
  return (
    <p id={id} className="plot-values">
      <span className="plot-where">
        {isPose ? "now" : "at"} {where}:
      </span>{" "}
      {spec.series.map((series) => {
        const value = valueAt(series, at);
        return (
          <span key={series.name} className="plot-value">
            {spec.series.length > 1 && `${series.name} `}
            <b>{value === null ? "none here" : readText(value, spec.y.measure, format)}</b>
          </span>
        );
      })}
    </p>
  );
}
