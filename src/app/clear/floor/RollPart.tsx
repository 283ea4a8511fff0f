import { useDeferredValue, useId, useMemo, useState } from "react";
import { poseJson } from "../../../studies/documents/poseJson.ts";
import { floorAt } from "../../../studies/floor/floorAt.ts";
import { wheelTravelsInRoll } from "../../../studies/floor/wheelTravelsInRoll.ts";
import { gapsAt } from "../../../studies/reports/gapsAt.ts";
import { angleText, lengthText } from "../../../studies/wording/lengths.ts";
import { poseSentence } from "../../../studies/wording/poseSentence.ts";
import { outsideTravelSentence } from "../../../studies/wording/poseWords.ts";
import type { Side } from "../../../suspension/frontEnd.ts";
import type { WheelTravels } from "../../../suspension/rollCenter.ts";
import { type ApartPose, type OutOfReach, solveApart } from "../../../suspension/solvePose.ts";
import { degFromRad, radFromDeg } from "../../../units/angle.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { Meaning } from "../../docs/Meaning.tsx";
import { documentFile } from "../../parts/reportFiles.ts";
import { SaveMenu } from "../../parts/SaveMenu.tsx";
import { setStage, useStage } from "../../state/stageSettings.ts";
import type { Truck } from "../../state/truck.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { TypedMeasure, wheelTravelOf } from "./MeasureField.tsx";
import { NamedPoses } from "./NamedPoses.tsx";

export type RollPartProps = {
  truck: Truck;
  /** mm */
  travel: number;
  format: LengthFormat;
};

/** Degrees. Asked for where the setup says no range of roll. */
const DEFAULT_MOST = 4;
const SIDES = ["left", "right"] as const;

/**
 * The body rolled over the floor at the height shown, or each wheel at its own travel, as with one on a bump: how both then lean on
 * it and what comes near there. The stage shows it.
 */
export function RollPart({ truck, travel, format }: RollPartProps) {
  const id = useId();
  const roll = useStage((s) => s.roll);
  const steer = useWorkbench((s) => s.steer);
  const [refused, setRefused] = useState<Refused | null>(null);
  if (refused !== null && !isStillAt(refused.from, { truck, travel, roll, steer })) setRefused(null);
  const asked = truck.setup.roll ? degFromRad(truck.setup.roll.most) : DEFAULT_MOST;
  const most = Math.max(asked, Math.abs(degFromRad(roll)));
  const found = useMemo(() => wheelTravelsInRoll(truck.model, travel, roll), [truck, travel, roll]);
  const floor = useMemo(() => found.ok && floorAt(truck.model, found.travels, 0), [truck, found]);
  const apart = useMemo(
    () => (roll !== 0 && found.ok ? solveApart(truck.model.frontEnd, found.travels, steer) : null),
    [truck, roll, found, steer],
  );
  const put = (side: Side, typed: string): string | null => {
    const read = wheelTravelOf(truck, typed, format);
    if (!read.ok || !found.ok) return read.ok ? null : read.mend;
    return show({ ...found.travels, [side]: read.travel }, steer);
  };
  const show = (travels: WheelTravels, at: number): string | null => {
    const outside = outsideTravelSentence(travels, truck.setup, format);
    if (outside !== "") return outside;
    const pose = solveApart(truck.model.frontEnd, travels, at);
    if (!pose.ok) return poseSentence([], pose, truck.model, format);
    const isLevel = travels.left === travels.right;
    setStage({ roll: isLevel ? 0 : (floorAt(truck.model, travels, 0)?.roll ?? 0) });
    workbench.getState().setPose(0.5 * (travels.left + travels.right), at);
    return null;
  };
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
      {found.ok && (
        <div className="floor-measures">
          {SIDES.map((side) => (
            <TypedMeasure
              key={side}
              label={`${side === "left" ? "Left" : "Right"} wheel travel, + bump`}
              shown={lengthText(found.travels[side], format)}
              onGo={(typed) => put(side, typed)}
            />
          ))}
        </div>
      )}
      <NamedPoses
        truck={truck}
        format={format}
        travels={found.ok ? found.travels : null}
        steer={steer}
        onGo={(travels, at) => {
          const why = show(travels, at);
          setRefused(why === null ? null : { why, from: { truck, travel, roll, steer } });
        }}
      />
      {refused !== null && (
        <p className="fold-passed" role="alert">
          {refused.why}
        </p>
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
              <th scope="row" aria-labelledby={`${id}-camber`}>
                <span id={`${id}-camber`}>
                  Camber to the floor <small>+ out at top</small>
                </span>{" "}
                <Meaning of="camber to the floor" />
              </th>
              <td>{angleText(floor.left.camber, 2)}</td>
              <td>{angleText(floor.right.camber, 2)}</td>
            </tr>
          </tbody>
        </table>
      ) : (
        <p className="fold-passed">
          {!found.ok &&
            `The ${found.side} ${found.joint} is out of reach${found.most ? ` past ${angleText(found.most.roll)} of roll` : " at this height"}.`}
        </p>
      )}
      {apart && <ApartAnswer truck={truck} pose={apart} format={format} />}
    </div>
  );
}

/** Why a pose was not gone to, and what was shown then: once something else is, it is told no more. */
interface Refused {
  readonly why: string;
  readonly from: ShownThen;
}

interface ShownThen {
  readonly truck: Truck;
  readonly travel: number;
  readonly roll: number;
  readonly steer: number;
}

function isStillAt(then: ShownThen, now: ShownThen): boolean {
  return (["truck", "travel", "roll", "steer"] as const).every((key) => Object.is(then[key], now[key]));
}

type ApartAnswerProps = { truck: Truck; pose: ApartPose | OutOfReach; format: LengthFormat };

/** What comes near with each wheel at its own travel, and the pose as a file. */
function ApartAnswer({ truck, pose, format }: ApartAnswerProps) {
  const { model } = truck;
  const shown = useDeferredValue(pose);
  const gaps = useMemo(() => (shown.ok ? gapsAt(model, shown) : []), [model, shown]);
  const file = () =>
    documentFile(truck, "pose", "This pose", () => {
      if (!shown.ok) throw new Error(poseSentence([], shown, model, format));
      return poseJson(shown, gaps, model, floorAt(model, shown.travels, shown.steer));
    });
  return (
    <>
      <p role="status">{keepTogether(poseSentence(gaps, shown, model, format))}</p>
      {shown.ok && <SaveMenu of="this pose" files={[file()]} />}
      <p className="fold-fine">
        The picture shows it so. Gaps and dimensions written elsewhere are those of the level truck.
      </p>
    </>
  );
}
