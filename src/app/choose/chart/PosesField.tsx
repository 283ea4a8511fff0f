import type { Setup } from "../../../setup/types/types.ts";
import { LOCKS, type PosesChosen } from "./chartPoses.ts";

export type PosesFieldProps = {
  setup: Setup;
  poses: PosesChosen;
  onChange: (poses: PosesChosen) => void;
};

/** Between which heights, and up to how much lock, a chart looks. */
export function PosesField({ setup, poses, onChange }: PosesFieldProps) {
  const names = setup.stances.map(({ name }) => name);
  const end = (which: "from" | "to", label: string, none: string) => (
    <select
      aria-label={label}
      value={names.includes(poses[which] ?? "") ? poses[which]! : ""}
      onChange={({ target }) => onChange({ ...poses, [which]: target.value === "" ? null : target.value })}
    >
      <option value="">{none}</option>
      {names.map((name) => (
        <option key={name} value={name}>
          {name}
        </option>
      ))}
    </select>
  );
  return (
    <fieldset className="chart-axis">
      <legend>Poses</legend>
      {end("from", "From this height", "From full droop")}
      {end("to", "To this height", "To full bump")}
      <select
        aria-label="Steering"
        value={poses.lock}
        onChange={({ target }) => onChange({ ...poses, lock: Number(target.value) })}
      >
        {LOCKS.map((lock) => (
          <option key={lock} value={lock}>
            {lock === 1 ? "Lock to lock" : `Up to ${100 * lock}% of either lock`}
          </option>
        ))}
      </select>
      <p className="chart-hint">Heights are this truck's stances. At one height, choose it twice.</p>
    </fieldset>
  );
}
