import { solvePose } from "../../suspension/solvePose.ts";
import type { Measure } from "../parts/plotNumbers.ts";
import type { Truck } from "../state/truck.ts";

/** A number of the knuckle; mm or rad. null = the truck does not stand. */
export interface KnuckleNumber {
  readonly name: string;
  /** What a plus sign means, or from where it is measured. */
  readonly note?: string;
  readonly measure: Measure;
  readonly value: number | null;
}

export interface NumberGroup {
  readonly title: string;
  readonly numbers: readonly KnuckleNumber[];
}

/** What a knuckle is built to, in its own axes, and what follows from it on the truck as measured, straight ahead. */
export function knuckleNumbers({ setup, model }: Truck): readonly NumberGroup[] {
  const { hubFace, pinHeight, pinAngle, pinLead, span, steeringArm } = setup.knuckle;
  const [forward, out, up] = steeringArm;
  const pose = solvePose(model.frontEnd, 0, 0);
  const left = pose.ok ? pose.left : null;
  const length = (name: string, value: number | null, note?: string): KnuckleNumber => ({
    name,
    measure: "length",
    value,
    ...(note !== undefined && { note }),
  });
  const angle = (name: string, value: number | null, note?: string): KnuckleNumber => ({
    ...length(name, value, note),
    measure: "angle",
  });
  return [
    {
      title: "Built to",
      numbers: [
        length("Ball joint span", span, "center to center"),
        length("Pin height", pinHeight, "up the axis from the lower joint"),
        angle("Pin angle", pinAngle, "below the square to the axis"),
        length("Pin lead", pinLead, "+ ahead of the axis"),
        length("Hub-face distance", hubFace, "along the pin from the axis"),
      ],
    },
    {
      title: "Outer tie rod end",
      numbers: [
        length("Forward", forward, "− = behind the axis"),
        length("Outboard", out, "− = inboard of the axis"),
        length("Up", up, "along the axis from the lower joint"),
      ],
    },
    {
      title: "On the truck as measured, straight ahead",
      numbers: [
        length("Half track", left && Math.abs(left.contactPatch[1])),
        length("Wheel center above the floor", left?.wheelCenter[2] ?? null),
        angle("Kingpin inclination", left?.kingpinInclination ?? null, "+ in at top"),
        angle("Caster", left?.caster ?? null, "+ back at top"),
        angle("Camber", left?.camber ?? null, "+ out at top"),
        length("Scrub radius", left?.scrubRadius ?? null, "+ patch outboard"),
        length("Mechanical trail", left?.mechanicalTrail ?? null, "+ patch behind"),
      ],
    },
  ];
}
