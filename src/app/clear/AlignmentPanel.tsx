import "./alignmentPanel.css";
import { useId, useMemo, useState } from "react";
import { angleText, lengthText } from "../../studies/wording/lengths.ts";
import { isStraight } from "../../studies/wording/poseWords.ts";
import { type SidePose, type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import { Meaning } from "../docs/Meaning.tsx";
import { reportFile } from "../parts/reportFiles.ts";
import { SaveMenu } from "../parts/SaveMenu.tsx";
import { shownPose } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import { useFormat, useWorkbench } from "../state/useWorkbench.ts";

export type AlignmentPanelProps = {
  truck: Truck;
};

type AlignmentNumber = {
  readonly name: string;
  /** What a plus sign means. */
  readonly plus: string;
  readonly text: (side: SidePose, format: LengthFormat) => string;
};

/** A word of the wheels straight ahead; steered, what is left of it is where each wheel points. */
const TOE: AlignmentNumber = {
  name: "Toe",
  plus: "+ in",
  text: (side) => angleText(side.toe, 2),
};
const STEER_ANGLE: AlignmentNumber = {
  name: "Steer angle",
  plus: "+ turned left",
  text: (side) => angleText(side.steerAngle, 2),
};

const NUMBERS: readonly AlignmentNumber[] = [
  { name: "Camber", plus: "+ out at top", text: (side) => angleText(side.camber, 2) },
  TOE,
  { name: "Caster", plus: "+ back at top", text: (side) => angleText(side.caster, 2) },
  {
    name: "Kingpin inclination",
    plus: "+ in at top",
    text: (side) => angleText(side.kingpinInclination, 2),
  },
  {
    name: "Scrub radius",
    plus: "+ patch outboard",
    text: (side, format) => lengthText(side.scrubRadius, format),
  },
  {
    name: "Mechanical trail",
    plus: "+ patch behind",
    text: (side, format) => lengthText(side.mechanicalTrail, format),
  },
];

interface Column {
  readonly name: string;
  readonly side: SidePose | null;
}

/** Alignment of both wheels at this pose; on demand, of the left one at each named height, wheels straight ahead. */
export function AlignmentPanel({ truck }: AlignmentPanelProps) {
  const id = useId();
  const pose = useWorkbench(shownPose);
  const travel = useWorkbench((s) => s.travel);
  const steer = useWorkbench((s) => s.steer);
  const format = useFormat();
  const [isByStance, setByStance] = useState(false);
  const stances = useMemo(() => stanceColumns(truck), [truck]);
  const isSteered = !isByStance && !isStraight(steer);
  const numbers = NUMBERS.map((number) => (number === TOE && isSteered ? STEER_ANGLE : number));
  const columns = isByStance ? stances : nowColumns(pose?.ok ? pose : null);
  return (
    <section className="alignment" aria-labelledby="alignment-title">
      <header className="alignment-head">
        <h2 id="alignment-title" className="label">
          {isByStance ? "Alignment at each stance, straight ahead, left wheel" : "Alignment now"}
        </h2>
        {stances.length > 0 && (
          <button
            type="button"
            className="alignment-switch"
            aria-pressed={isByStance}
            onClick={() => setByStance(!isByStance)}
          >
            at each stance
          </button>
        )}
      </header>
      <table className={isByStance ? undefined : "alignment-now"}>
        <thead>
          <tr>
            <td />
            {columns.map(({ name }) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {numbers.map(({ name, plus, text }, i) => (
            <tr key={name}>
              <th scope="row" aria-labelledby={`${id}-${i}`}>
                <span id={`${id}-${i}`}>
                  {name} <small>{plus}</small>
                </span>
                <Meaning of={name.toLowerCase()} />
              </th>
              {columns.map((column) => (
                <td key={column.name}>{column.side ? text(column.side, format) : "–"}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <SaveMenu
        of="the pose shown"
        files={[reportFile(truck, { of: "pose", travel, steer }, "The pose shown: alignment, points, gaps")]}
      />
      <p className="alignment-note">
        Camber is what a gauge on the wheel reads; steered, it differs a little from camber on the truck’s own
        axes.
      </p>
    </section>
  );
}

function nowColumns(pose: SolvedPose | null): Column[] {
  return [
    { name: "Left", side: pose?.left ?? null },
    { name: "Right", side: pose?.right ?? null },
  ];
}

function stanceColumns({ model, setup }: Truck): Column[] {
  return setup.stances.map(({ name, travel }) => {
    const pose = solvePose(model.frontEnd, travel, 0);
    return { name, side: pose.ok ? pose.left : null };
  });
}
