import type { AirSpringSetup } from "../../../setup/types/airTypes.ts";
import type { LengthUnit } from "../../../setup/types/types.ts";
import type { AirSeat } from "../../../studies/air/airSeat.ts";
import type { AirState } from "../../../studies/air/airState.ts";
import { type SeatLimits, seatClause } from "../../../studies/wording/airSeatWords.ts";
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
import { keepTogether } from "../../words/keyWords.ts";

/** The spring at one height. */
export interface AirRow {
  readonly name: string;
  /** mm; null = the pose shown, to which nobody has to go. */
  readonly travel: number | null;
  /** null = the wheel cannot stand there. */
  readonly state: AirState | null;
  /** What it sits on there, nothing in the bag: told in place of load, pressure and ride. */
  readonly seat?: AirSeat;
}

export type AirTableProps = {
  caption: string;
  rows: readonly AirRow[];
  spring: AirSpringSetup;
  setup: SeatLimits;
  units: LengthUnit;
  format: LengthFormat;
};

/** Height, load, pressure and ride of the spring, a row a height, one of the empty bag; each name goes there. */
export function AirTable({ caption, rows, spring, setup, units, format }: AirTableProps) {
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
        {rows.map(({ name, travel, state, seat }) => (
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
                {seat ? (
                  <td colSpan={3} className="air-seat">
                    {keepTogether(seatClause(seat, setup, format))}
                  </td>
                ) : (
                  <>
                    <td>{quantityText(state.load, "load", units)}</td>
                    <td>
                      {holdingText(state, spring, units)}
                      <Beyond text={beyondText(state.pressureWithin, "pressure")} />
                    </td>
                    <td>{frequencyText(state)}</td>
                  </>
                )}
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
