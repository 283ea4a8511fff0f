import { useId } from "react";
import type { WindowField } from "../../../studies/window/windowField.ts";
import type { PlotKind } from "../../clear/plots/curveKinds.ts";
import { FieldChooser } from "./FieldChooser.tsx";

export type FanFormProps = {
  fields: readonly WindowField[];
  field: WindowField;
  document: unknown;
  from: string;
  to: string;
  /** Whether each end is understood. */
  isRead: readonly [boolean, boolean];
  count: number;
  plots: readonly PlotKind[];
  plotId: string;
  onField: (key: string) => void;
  onEnds: (ends: readonly [from: string, to: string]) => void;
  onCount: (count: number) => void;
  onPlot: (id: string) => void;
};

const COUNTS = [3, 5, 7, 9] as const;

/** Which field fans over what, and which curve is drawn. */
export function FanForm(props: FanFormProps) {
  const { fields, field, document, from, to, isRead, count, plots, plotId } = props;
  const id = useId();
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
      <label>
        in{" "}
        <select value={count} onChange={(event) => props.onCount(Number(event.target.value))}>
          {COUNTS.map((steps) => (
            <option key={steps} value={steps}>
              {steps} values
            </option>
          ))}
        </select>
      </label>
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
    </div>
  );
}
