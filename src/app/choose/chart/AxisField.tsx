import { useId } from "react";
import { axisName } from "../../../studies/wording/chartWords.ts";
import { type AxisTyped, CHART_FIELDS } from "./chartAxes.ts";

/** What may be given for an axis that reads. */
function hintOf({ key, table }: AxisTyped): string {
  if (table !== null) return "A row of the list for each.";
  return key === "tire" || key === "tire.size"
    ? "Sizes with commas between, or a list."
    : "From:to:step, or values with commas between.";
}

export type AxisFieldProps = {
  /** `Across` or `Down`. */
  name: string;
  axis: AxisTyped;
  /** What stands there where nothing is typed. */
  start: string;
  /** Why it cannot be read; null = it can. */
  mend: string | null;
  document: unknown;
  onChange: (axis: AxisTyped) => void;
};

/** One axis of a chart: its field, and its values as typed or as a list dropped here. */
export function AxisField({ name, axis, start, mend, document, onChange }: AxisFieldProps) {
  const id = useId();
  const take = async (file: File | undefined) => {
    if (file) onChange({ ...axis, table: { name: file.name, text: await file.text() } });
  };
  return (
    <fieldset
      className="chart-axis"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        event.stopPropagation();
        void take(event.dataTransfer.files[0]);
      }}
    >
      <legend>{name}</legend>
      <select
        aria-label={`${name}: field`}
        value={axis.key}
        onChange={(event) => onChange({ key: event.target.value, text: null, table: null })}
      >
        {CHART_FIELDS.map((key) => (
          <option key={key} value={key}>
            {key === "tire" || key === "wheel" ? `List of ${key}s` : axisName(key, document)}
          </option>
        ))}
      </select>
      {axis.table !== null ? (
        <span className="chart-list">
          {axis.table.name}{" "}
          <button type="button" className="button" onClick={() => onChange({ ...axis, table: null })}>
            {axis.key === "wheel" ? "Take it off" : "Type instead"}
          </button>
        </span>
      ) : (
        axis.key !== "wheel" && (
          <input
            aria-label={`${name}: values`}
            aria-invalid={mend !== null}
            aria-describedby={`${id}-mend`}
            value={axis.text ?? start}
            onChange={(event) => onChange({ ...axis, text: event.target.value })}
          />
        )
      )}
      <label className="button chart-file">
        List from a file…
        <input
          type="file"
          accept=".csv,.txt,text/csv,text/plain"
          className="visually-hidden"
          onChange={(event) => void take(event.target.files?.[0])}
        />
      </label>
      <p
        id={`${id}-mend`}
        className={mend === null ? "chart-hint" : "chart-mend"}
        role={mend === null ? undefined : "alert"}
      >
        {mend ?? hintOf(axis)}
      </p>
    </fieldset>
  );
}
