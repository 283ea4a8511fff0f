import type { AirSpringSetup } from "../../../setup/types/airTypes.ts";
import type { LengthUnit } from "../../../setup/types/types.ts";
import type { AirState } from "../../../studies/air/airState.ts";
import {
  airHeightText,
  beyondText,
  frequencyText,
  holdingText,
  quantityText,
} from "../../../studies/wording/airWords.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { StateMark } from "../../parts/StateMark.tsx";
import { useWorkbench } from "../../state/useWorkbench.ts";

/** The spring at one height. */
export interface AirRow {
  readonly name: string;
  /** mm; null = the pose shown, to which nobody has to go. */
  readonly travel: number | null;
  /** null = the wheel cannot stand there. */
  readonly state: AirState | null;
}

export type AirTableProps = {
  caption: string;
  rows: readonly AirRow[];
  spring: AirSpringSetup;
  units: LengthUnit;
  format: LengthFormat;
};

/** Height, load, pressure and ride of the spring, a row a height; each name goes there. */
export function AirTable({ caption, rows, spring, units, format }: AirTableProps) {
  const setTravel = useWorkbench((s) => s.setTravel);
  return (
    <table className="air-table">
      <caption className="sr-only">{caption}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">Height</th>
          <th scope="col">Load</th>
          <th scope="col">To hold it here</th>
          <th scope="col">Ride</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, travel, state }) => (
          <tr key={name}>
            <th scope="row">
              {travel === null ? (
                name
              ) : (
                <button type="button" className="fold-link" onClick={() => setTravel(travel)}>
                  {name}
                </button>
              )}
            </th>
            {state === null ? (
              <td colSpan={4}>out of reach</td>
            ) : (
              <>
                <td>
                  {airHeightText(state.height, spring, format)}
                  <Beyond text={beyondText(state.heightWithin, "height")} />
                </td>
                <td>{quantityText(state.load, "load", units)}</td>
                <td>
                  {holdingText(state, spring, units)}
                  <Beyond text={beyondText(state.pressureWithin, "pressure")} />
                </td>
                <td>{frequencyText(state)}</td>
              </>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Beyond({ text }: { text: string }) {
  if (text === "") return null;
  return (
    <span className="air-beyond">
      <StateMark word="rubs" size={0.8} /> {text}
    </span>
  );
}
