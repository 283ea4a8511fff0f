import { useId, useState } from "react";
import { poseNameMend } from "../../../setup/blocks/poses.ts";
import { type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import { namedPoseText } from "../../../studies/wording/poseWords.ts";
import type { WheelTravels } from "../../../suspension/rollCenter.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { plainLengthText } from "../../../units/plainLengthText.ts";
import { freeName } from "../../state/freeName.ts";
import { shownDocument } from "../../state/selectors.ts";
import type { Truck } from "../../state/truck.ts";
import { fileUnitsOf } from "../../state/typedDocument.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keepTogether } from "../../words/keyWords.ts";

const POSES: KeyPath = ["poses"];
const NO_NAME = "such as left wheel on a curb";

export type NamedPosesProps = {
  truck: Truck;
  format: LengthFormat;
  /** Of the pose shown; null = a wheel is out of reach. */
  travels: WheelTravels | null;
  steer: number;
  onGo: (travels: WheelTravels, steer: number) => void;
};

/** Poses that the setup has by name, each wheel at its own travel: gone to by a press, and the one shown named. */
export function NamedPoses({ truck, format, travels, steer, onGo }: NamedPosesProps) {
  const { poses } = truck.setup;
  const list = useWorkbench((s) => valueAt(shownDocument(s), POSES));
  const count = Array.isArray(list) ? list.length : 0;
  const { removeItem } = workbench.getState();
  return (
    <>
      {poses.length > 0 && (
        <ul className="named-poses" aria-label="Named poses">
          {poses.map((pose, i) => {
            const isShown = travels !== null && isSamePose(pose, { travels, steer });
            return (
              <li key={pose.name}>
                <button
                  type="button"
                  className="button"
                  aria-pressed={isShown}
                  onClick={() => onGo(pose.travels, pose.steer)}
                >
                  {pose.name}
                </button>
                <span className="fold-fine">{keepTogether(namedPoseText(pose, format))}</span>
                <button
                  type="button"
                  className="small-button"
                  // What is not read yet has no place in the list of those read.
                  disabled={poses.length !== count}
                  aria-label={`Remove ${pose.name}`}
                  onClick={() => removeItem(POSES, i)}
                >
                  Remove
                </button>
              </li>
            );
          })}
        </ul>
      )}
      <NameIt travels={travels} steer={steer} count={count} />
    </>
  );
}

type NameItProps = { travels: WheelTravels | null; steer: number; count: number };

/** Gives the pose shown a name, in the setup; out of reach it keeps what was typed. */
function NameIt({ travels, steer, count }: NameItProps) {
  const id = useId();
  const [name, setName] = useState("");
  const [mend, setMend] = useState<string | null>(null);
  const add = () => {
    if (travels === null) return;
    const state = workbench.getState();
    const units = fileUnitsOf(state.document);
    const document = shownDocument(state);
    const own = name.trim();
    const wrong = own === "" ? null : poseNameMend(own, document);
    setMend(wrong && `“${own}” ${wrong}.`);
    if (wrong !== null) return;
    const length = (mm: number) => plainLengthText(Math.round(mm * 1e4) / 1e4, units);
    state.insertItem(POSES, count, {
      name:
        own === "" ? freeName("pose", [...namesOf(document, "poses"), ...namesOf(document, "stances")]) : own,
      leftTravel: length(travels.left),
      rightTravel: length(travels.right),
      ...(steer === 0 ? {} : { steer }),
    });
    setName("");
  };
  return (
    <form
      className="name-pose"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <label>
        Name of this pose{" "}
        <input
          className="entry"
          type="text"
          autoComplete="off"
          maxLength={60}
          placeholder={NO_NAME}
          aria-invalid={mend !== null || undefined}
          aria-describedby={mend === null ? undefined : id}
          value={name}
          onChange={(event) => {
            setName(event.target.value);
            setMend(null);
          }}
        />
      </label>
      <button type="submit" className="button" disabled={travels === null}>
        Name this pose
      </button>
      {mend !== null && (
        <p id={id} className="fold-passed" role="alert">
          <span aria-hidden="true">✕ </span>
          {mend}
        </p>
      )}
    </form>
  );
}

function namesOf(document: unknown, list: "poses" | "stances"): readonly string[] {
  const known = valueAt(document, [list]);
  return (Array.isArray(known) ? known : []).map((one) => String(valueAt(one, ["name"])));
}

/** mm, and share of full lock: rounding. */
const SAME = 1e-3;

function isSamePose(
  a: { readonly travels: WheelTravels; readonly steer: number },
  b: { readonly travels: WheelTravels; readonly steer: number },
): boolean {
  return [a.travels.left - b.travels.left, a.travels.right - b.travels.right, a.steer - b.steer].every(
    (off) => Math.abs(off) < SAME,
  );
}
