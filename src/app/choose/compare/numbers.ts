import { type SidePose, solvePose } from "../../../suspension/solvePose.ts";
import type { Measure } from "../../parts/plotNumbers.ts";
import type { Truck } from "../../state/truck.ts";

/** A number of a truck that variants are compared by; mm or rad. null = it has none. */
export interface ComparedNumber {
  readonly name: string;
  readonly measure: Measure;
  readonly read: (truck: Truck) => number | null;
}

/** mm, rad. Two numbers nearer than this read the same. */
const ALIKE = 1e-4;

const knuckle = (
  name: string,
  measure: Measure,
  key: "hubFace" | "span" | "pinHeight" | "pinLead" | "pinAngle",
) => ({
  name,
  measure,
  read: ({ setup }: Truck) => setup.knuckle[key],
});

const atRest = (name: string, measure: Measure, read: (side: SidePose) => number): ComparedNumber => ({
  name,
  measure,
  read: ({ model }) => {
    const pose = solvePose(model.frontEnd, 0, 0);
    return pose.ok ? read(pose.left) : null;
  },
});

/** What is compared: what was chosen, then what follows from it at the height as measured, wheels straight ahead. */
export const NUMBERS: readonly ComparedNumber[] = [
  knuckle("Hub face", "length", "hubFace"),
  knuckle("Pin height", "length", "pinHeight"),
  knuckle("Pin angle", "angle", "pinAngle"),
  knuckle("Pin lead", "length", "pinLead"),
  knuckle("Ball joint span", "length", "span"),
  { name: "Wheel offset", measure: "length", read: ({ setup }) => setup.wheel.offset },
  { name: "Rim width", measure: "length", read: ({ setup }) => setup.wheel.rimWidth },
  { name: "Tire radius", measure: "length", read: ({ model }) => model.ring.freeRadius },
  atRest("Half track", "length", (side) => Math.abs(side.contactPatch[1])),
  atRest("Wheel center above the floor as measured", "length", (side) => side.wheelCenter[2]),
  atRest("Camber", "angle", (side) => side.camber),
  atRest("Caster", "angle", (side) => side.caster),
  atRest("Kingpin inclination", "angle", (side) => side.kingpinInclination),
  atRest("Toe", "angle", (side) => side.toe),
  atRest("Scrub radius", "length", (side) => side.scrubRadius),
  atRest("Mechanical trail", "length", (side) => side.mechanicalTrail),
];

/** Whether any of the values differs from the first. */
export function differs(values: readonly (number | null)[]): boolean {
  const [first] = values;
  return values.some((value) => Math.abs((value ?? Number.NaN) - (first ?? Number.NaN)) > ALIKE);
}
