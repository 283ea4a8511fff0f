import type { Vec3 } from "../../geometry/vec.ts";
import type { Setup, SetupIssue } from "../../setup/types/types.ts";
import type { AssemblyIssue } from "../../suspension/frontEnd.ts";
import { formatAngle } from "../../units/angle.ts";
import { formatLength } from "../../units/formatLength.ts";

/** What keeps a truck from standing as measured, as an issue of the setup: the key to look at, its value, the mend. */
export function assemblyIssue(issue: AssemblyIssue, setup: Setup, file: string): SetupIssue {
  const { key, mend, least, most } = issue;
  const value = valueAt(setup, key);
  if (least === undefined || most === undefined) return { file, key, value, mend };
  const [from, to] = [lengthText(setup, least), lengthText(setup, most)];
  return {
    file,
    key,
    value,
    mend: `${mend}; between ${from} and ${to} it closes`,
    range: { least, most },
  };
}

function valueAt(setup: Setup, key: string): string {
  const { knuckle, truck, alignment } = setup;
  switch (key) {
    case "knuckle.span":
      return lengthText(setup, knuckle.span);
    case "knuckle.steeringArm":
      return pointText(setup, knuckle.steeringArm);
    case "truck.lowerArm.ballJoint":
      return pointText(setup, truck.lowerArm.ballJoint);
    case "truck.upperArm.ballJoint":
      return pointText(setup, truck.upperArm.ballJoint);
    case "alignment.toe":
      return formatAngle(alignment.toe);
    default:
      return "";
  }
}

function pointText(setup: Setup, point: Vec3): string {
  return `[${point.map((mm) => lengthText(setup, mm)).join(", ")}]`;
}

function lengthText({ units }: Setup, mm: number): string {
  return formatLength(mm, { units });
}
