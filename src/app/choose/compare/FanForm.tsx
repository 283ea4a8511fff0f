import { useId } from "react";
import type { WindowField } from "../../../studies/window/windowField.ts";
import type { PlotKind } from "../../clear/plots/curveKinds.ts";
import { FieldChooser } from "./FieldChooser.tsx";
import { FAN_COUNTS, fanCount } from "./fan.ts";

export type FanFormProps = {
  fields: readonly WindowField[];
  field: WindowField;
  document: unknown;
  from: string;
  to: string;
  /** Whether each end is understood. */
  isRead: readonly [boolean, boolean];
  /** How many values, as typed. */
  count: string;
  /** How far they are apart; null = an end or the count is not understood. */
  apart: string | null;
  plots: readonly PlotKind[];
  plotId: string;
  onField: (key: string) => void;
  onEnds: (ends: readonly [from: string, to: string]) => void;
  onCount: (count: string) => void;
  onPlot: (id: string) => void;
};

/** Which field fans over what, and which curve is drawn. */
export function FanForm(props: FanFormProps) {
  const { fields, field, document, from, to, isRead, count, apart, plots, plotId } = props;
  const id = useId();
  const isCounted = fanCount(count) !== null;
  return (
    <div className="fan-form">
      <FieldChooser fields={fields} value={field.key} document={document} onField={props.onField} />
      <label>
        from{" "}
        <input
          value={from}
          size={8}
          aria-invalid={!isRead[0]}
          aria-describedby={isRead[0] ? undefined : `${id}-mend`}
          onChange={(event) => props.onEnds([event.target.value, to])}
        />
      </label>
      <label>
        to{" "}
        <input
          value={to}
          size={8}
          aria-invalid={!isRead[1]}
          aria-describedby={isRead[1] ? undefined : `${id}-mend`}
          onChange={(event) => props.onEnds([from, event.target.value])}
        />
      </label>
      <span className="fan-count">
        <label>
          values{" "}
          <input
            type="number"
            min={FAN_COUNTS.least}
            max={FAN_COUNTS.most}
            step={1}
            value={count}
            aria-invalid={!isCounted}
            aria-describedby={isCounted ? undefined : `${id}-count`}
            onChange={(event) => props.onCount(event.target.value)}
          />
        </label>{" "}
        {apart !== null && <span role="status">{apart}</span>}
      </span>
      <label>
        Curve{" "}
        <select value={plotId} onChange={(event) => props.onPlot(event.target.value)}>
          {plots.map((plot) => (
            <option key={plot.id} value={plot.id}>
              {plot.title}
            </option>
          ))}
        </select>
      </label>
      {!(isRead[0] && isRead[1]) && (
        <p id={`${id}-mend`} className="fan-mend">
          Write {field.kind === "angle" ? "an angle such as 8.4" : "a length such as 5 5/8 or 143 mm"} at both
          ends.
        </p>
      )}
      {!isCounted && (
        <p id={`${id}-count`} className="fan-mend" role="alert">
          Write how many values as a whole number from {FAN_COUNTS.least} to {FAN_COUNTS.most}.
        </p>
      )}
    </div>
  );
}
