import "./alignmentPanel.css";
import type { SidePose } from "../../suspension/solvePose.ts";
import { shownPose } from "../state/shown.ts";
import type { Truck } from "../state/truck.ts";
import { useWorkbench } from "../state/useWorkbench.ts";
import { angleText } from "../words/angleText.ts";
import { lengthText } from "../words/lengthText.ts";

export type AlignmentPanelProps = {
  truck: Truck;
};

type AlignmentNumber = {
  readonly name: string;
  /** What a plus sign means. */
  readonly plus: string;
  readonly text: (side: SidePose, truck: Truck) => string;
};

const NUMBERS: readonly AlignmentNumber[] = [
  { name: "Camber", plus: "+ out at top", text: (side) => angleText(side.camber, 2) },
  { name: "Toe", plus: "+ in", text: (side) => angleText(side.toe, 2) },
  { name: "Caster", plus: "+ back at top", text: (side) => angleText(side.caster, 2) },
  {
    name: "Kingpin inclination",
    plus: "+ in at top",
    text: (side) => angleText(side.kingpinInclination, 2),
  },
  {
    name: "Scrub radius",
    plus: "+ patch outboard",
    text: (side, { setup }) => lengthText(side.scrubRadius, setup),
  },
  {
    name: "Mechanical trail",
    plus: "+ patch behind",
    text: (side, { setup }) => lengthText(side.mechanicalTrail, setup),
  },
];

/** Alignment of both wheels at this pose. */
export function AlignmentPanel({ truck }: AlignmentPanelProps) {
  const pose = useWorkbench(shownPose);
  if (!pose?.ok) return null;
  return (
    <section className="alignment" aria-labelledby="alignment-title">
      <h2 id="alignment-title" className="label">
        Alignment now
      </h2>
      <table>
        <thead>
          <tr>
            <td />
            <th scope="col">Left</th>
            <th scope="col">Right</th>
          </tr>
        </thead>
        <tbody>
          {NUMBERS.map(({ name, plus, text }) => (
            <tr key={name}>
              <th scope="row">
                {name} <small>{plus}</small>
              </th>
              <td>{text(pose.left, truck)}</td>
              <td>{text(pose.right, truck)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="alignment-note">
        Camber is what a gauge on the wheel reads; steered, it differs a little from camber on the truck’s own
        axes.
      </p>
    </section>
  );
}
