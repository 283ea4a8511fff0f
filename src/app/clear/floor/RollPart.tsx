import { useId, useMemo } from "react";
import { floorAt } from "../../../studies/floor/floorAt.ts";
import { wheelTravelsInRoll } from "../../../studies/floor/wheelTravelsInRoll.ts";
import { angleText } from "../../../studies/wording/lengths.ts";
import { travelText } from "../../../studies/wording/poseWords.ts";
import { degFromRad, radFromDeg } from "../../../units/angle.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { setStage, useStage } from "../../state/stageSettings.ts";
import type { Truck } from "../../state/truck.ts";

export type RollPartProps = {
  truck: Truck;
  /** mm */
  travel: number;
  format: LengthFormat;
};

/** Degrees. Asked for where the setup says no range of roll. */
const DEFAULT_MOST = 4;

/** The body rolled over the floor at the height shown: how both wheels then lean on it. The stage shows it. */
export function RollPart({ truck, travel, format }: RollPartProps) {
  const id = useId();
  const roll = useStage((s) => s.roll);
  const most = truck.setup.roll ? degFromRad(truck.setup.roll.most) : DEFAULT_MOST;
  const found = useMemo(() => wheelTravelsInRoll(truck.model, travel, roll), [truck, travel, roll]);
  const floor = useMemo(() => found.ok && floorAt(truck.model, found.travels, 0), [truck, found]);
  return (
    <div className="floor-roll">
      <label htmlFor={id}>
        Body roll, + = left side up: <output htmlFor={id}>{angleText(roll)}</output>
      </label>
      <input
        id={id}
        type="range"
        min={-most}
        max={most}
        step={0.1}
        value={degFromRad(roll)}
        aria-valuetext={`${angleText(roll)}${roll === 0 ? ", level" : roll > 0 ? ", left side up" : ", right side up"}`}
        onChange={(event) => setStage({ roll: radFromDeg(Number(event.target.value)) })}
      />
      {roll !== 0 && (
        <button type="button" className="button" onClick={() => setStage({ roll: 0 })}>
          Level again
        </button>
      )}
      {floor ? (
        <table>
          <caption className="sr-only">Both wheels on the floor in roll, straight ahead</caption>
          <thead>
            <tr>
              <td />
              <th scope="col">Left</th>
              <th scope="col">Right</th>
            </tr>
          </thead>
          <tbody>
            <tr>
              <th scope="row">Camber to the floor, + out at top</th>
              <td>{angleText(floor.left.camber, 2)}</td>
              <td>{angleText(floor.right.camber, 2)}</td>
            </tr>
            <tr>
              <th scope="row">Wheel travel</th>
              <td>{travelText(floor.left.travel, format)}</td>
              <td>{travelText(floor.right.travel, format)}</td>
            </tr>
          </tbody>
        </table>
      ) : (
        <p className="fold-passed">
          {!found.ok &&
            `The ${found.side} ${found.joint} is out of reach${found.most ? ` past ${angleText(found.most.roll)} of roll` : " at this height"}.`}
        </p>
      )}
      {roll !== 0 && (
        <p className="fold-fine">
          The stage shows it rolled. Gaps and dimensions are those of the level truck, so they are not written
          on it.
        </p>
      )}
    </div>
  );
}
