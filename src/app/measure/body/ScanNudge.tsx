import { useState } from "react";
import type { KeyPath } from "../../../setup/types/keyPath.ts";
import { type ScanStep, stepAlong } from "../../../studies/worksheet/scanMove.ts";
import { MM_PER_INCH } from "../../../units/lengthUnits.ts";
import { lengthFormat } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { nudgeScan } from "./placeScan.ts";

const SIZES = {
  in: [
    { label: "1/16 in, 0.1°", mm: MM_PER_INCH / 16, degrees: 0.1 },
    { label: "1/4 in, 1°", mm: MM_PER_INCH / 4, degrees: 1 },
    { label: "1 in, 5°", mm: MM_PER_INCH, degrees: 5 },
    { label: "6 in, 90°", mm: 6 * MM_PER_INCH, degrees: 90 },
  ],
  mm: [
    { label: "1 mm, 0.1°", mm: 1, degrees: 0.1 },
    { label: "5 mm, 1°", mm: 5, degrees: 1 },
    { label: "25 mm, 5°", mm: 25, degrees: 5 },
    { label: "150 mm, 90°", mm: 150, degrees: 90 },
  ],
} as const;

/** What a step does, each way; a turn by the right-hand rule about its axis. */
const WAYS = [
  { axis: 0, less: "Back", more: "Forward", turned: "front view" },
  { axis: 1, less: "In", more: "Out", turned: "side view" },
  { axis: 2, less: "Down", more: "Up", turned: "top view" },
] as const;

export type ScanNudgeProps = {
  /** Of the body part. */
  path: KeyPath;
  /** It stands on the right as it was typed. */
  isOnRight: boolean;
};

/** Moves and turns a scan by small steps, each a step to undo. */
export function ScanNudge({ path, isOnRight }: ScanNudgeProps) {
  const units = useWorkbench((s) => lengthFormat(s).units);
  const [size, setSize] = useState(0);
  const { mm, degrees } = SIZES[units][size]!;
  const button = (label: string, step: ScanStep) => (
    <button key={label} type="button" className="small-button" onClick={() => nudgeScan(path, step)}>
      {label}
    </button>
  );
  return (
    <fieldset className="scan-nudge">
      <legend>Nudge it</legend>
      <label>
        by{" "}
        <select
          className="field-choice"
          value={size}
          onChange={({ target }) => setSize(Number(target.value))}
        >
          {SIZES[units].map(({ label }, i) => (
            <option key={label} value={i}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <div className="row-tools">
        {WAYS.flatMap(({ axis, less, more }) => [
          button(less, stepAlong(axis, -mm, isOnRight)),
          button(more, stepAlong(axis, mm, isOnRight)),
        ])}
      </div>
      <div className="row-tools">
        {WAYS.flatMap(({ axis, turned }) => [
          button(`Turn ↺ ${turned}`, { about: axis, degrees }),
          button(`Turn ↻ ${turned}`, { about: axis, degrees: -degrees }),
        ])}
      </div>
    </fieldset>
  );
}
