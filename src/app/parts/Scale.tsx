import "./scale.css";
import { type KeyboardEvent, useId } from "react";
import { stepTo } from "../../units/stepLength.ts";
import { type ReadValue, ScaleReadout } from "./ScaleReadout.tsx";

export type ScaleMark = {
  /** Value it stands at. */
  at: number;
  /** Drawn longer than the others. */
  isLong: boolean;
};

export type ScaleEnd = {
  word: string;
  /** Such as `full left lock`. */
  name: string;
};

export type ScaleProps = {
  label: string;
  /** What its words mean, beside the label as far as there is room. */
  hint: string;
  /** In the unit of min, max and step. */
  value: number;
  min: number;
  max: number;
  /** What an arrow key moves, and what a drag snaps to. */
  step: number;
  /** Steps that Page Up and Page Down move. */
  pageSteps: number;
  /** Puts the greatest value at the left end. Default false. */
  isReversed?: boolean;
  /** The value as a person reads it, large. */
  readout: string;
  /** Reads a value that is typed. */
  read: (text: string) => ReadValue;
  /** What may be typed. */
  example: string;
  /** What else goes with it, small, between the ends. */
  note: string;
  /** The value as a screen reader says it. */
  spoken: string;
  marks: readonly ScaleMark[];
  /** A button of its own for the value most wanted, with its name. Default none. */
  home?: { readonly name: string; readonly value: number };
  /** Words under the left and the right end, and what they are called in full; pressed, they go there. */
  ends: readonly [left: ScaleEnd, right: ScaleEnd];
  onChange: (value: number) => void;
};

/** A drafting scale with a slide on it: drag it, step it with the keys, or type its value. */
export function Scale(props: ScaleProps) {
  const {
    label,
    hint,
    value,
    min,
    max,
    step,
    isReversed = false,
    readout,
    note,
    spoken,
    marks,
    home,
    ends,
    onChange,
  } = props;
  const id = useId();
  const clamp = (wanted: number) => Math.min(max, Math.max(min, wanted));
  const share = (at: number) => (isReversed ? (max - at) / (max - min) : (at - min) / (max - min));

  const onKeyDown = (event: KeyboardEvent) => {
    const toRight = isReversed ? -1 : 1;
    const way = {
      ArrowRight: toRight,
      ArrowLeft: -toRight,
      ArrowUp: 1,
      ArrowDown: -1,
      PageUp: 1,
      PageDown: -1,
    }[event.key] as 1 | -1 | undefined;
    if (way !== undefined) {
      const count = event.key.startsWith("Page") || event.shiftKey ? props.pageSteps : 1;
      onChange(clamp(stepTo(value, step, way, count)));
    } else if (event.key === "Home") onChange(min);
    else if (event.key === "End") onChange(max);
    else return;
    event.preventDefault();
  };

  return (
    <div className="scale">
      <div className="scale-head">
        <span className="scale-label">
          <label htmlFor={id} className="label">
            {label}
          </label>
          <small>{hint}</small>
        </span>
        <ScaleReadout
          label={label}
          readout={readout}
          example={props.example}
          read={props.read}
          onChange={onChange}
        />
        {home && (
          <button
            type="button"
            className="button scale-home"
            aria-pressed={value === home.value}
            onClick={() => onChange(home.value)}
          >
            {home.name}
          </button>
        )}
      </div>
      <div className="scale-track">
        <svg className="scale-marks" aria-hidden="true">
          {marks.map(({ at, isLong }) => {
            const x = `${share(at) * 100}%`;
            return <line key={at} x1={x} x2={x} y1={0} y2={isLong ? 14 : 8} />;
          })}
        </svg>
        {/* "any": the range need not be whole steps; a drag is snapped here, keys are stepped above. */}
        <input
          id={id}
          data-scale={label}
          type="range"
          dir={isReversed ? "rtl" : "ltr"}
          min={min}
          max={max}
          step="any"
          value={value}
          aria-valuetext={spoken}
          onChange={(event) => onChange(clamp(Math.round(Number(event.target.value) / step) * step))}
          onKeyDown={onKeyDown}
        />
      </div>
      <div className="scale-ends">
        <End end={ends[0]} at={isReversed ? max : min} value={value} onGo={onChange} />
        <span className="scale-note" aria-hidden="true">
          {note}
        </span>
        <End end={ends[1]} at={isReversed ? min : max} value={value} onGo={onChange} />
      </div>
    </div>
  );
}

type EndProps = { end: ScaleEnd; at: number; value: number; onGo: (value: number) => void };

/** Goes to one end of the scale. */
function End({ end: { word, name }, at, value, onGo }: EndProps) {
  return (
    <button
      type="button"
      className="scale-end"
      aria-label={name}
      title={name}
      aria-pressed={value === at}
      onClick={() => onGo(at)}
    >
      {word}
    </button>
  );
}
