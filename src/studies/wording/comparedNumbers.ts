import { type SidePose, solvePose } from "../../suspension/solvePose.ts";
import { formatAngle } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { Model } from "../model/model.ts";
import { lengthText, readsAlike, withMinus } from "./lengths.ts";

/** A number of a truck that variants are compared by; mm or rad. null = it has none. */
export interface ComparedNumber {
  readonly name: string;
  readonly measure: "length" | "angle";
  /** @param travel mm; default 0, as measured. What a part is by itself is the same at every height. */
  readonly read: (model: Model, travel?: number) => number | null;
}

const knuckle = (
  name: string,
  measure: ComparedNumber["measure"],
  key: "hubFace" | "span" | "pinHeight" | "pinLead" | "pinAngle",
): ComparedNumber => ({ name, measure, read: ({ setup }) => setup.knuckle[key] });

const straightAhead = (
  name: string,
  measure: ComparedNumber["measure"],
  read: (side: SidePose) => number,
): ComparedNumber => ({
  name,
  measure,
  read: ({ frontEnd }, travel = 0) => {
    const pose = solvePose(frontEnd, travel, 0);
    return pose.ok ? read(pose.left) : null;
  },
});

/** What is compared: what was chosen, then what follows from it at a height, wheels straight ahead. */
export const NUMBERS: readonly ComparedNumber[] = [
  knuckle("Hub-face distance", "length", "hubFace"),
  knuckle("Pin height", "length", "pinHeight"),
  knuckle("Pin angle", "angle", "pinAngle"),
  knuckle("Pin lead", "length", "pinLead"),
  knuckle("Ball joint span", "length", "span"),
  { name: "Wheel offset", measure: "length", read: ({ setup }) => setup.wheel.offset },
  { name: "Rim width", measure: "length", read: ({ setup }) => setup.wheel.rimWidth },
  { name: "Tire radius", measure: "length", read: ({ ring }) => ring.freeRadius },
  straightAhead("Half track", "length", (side) => Math.abs(side.contactPatch[1])),
  straightAhead("Wheel center above the floor as measured", "length", (side) => side.wheelCenter[2]),
  straightAhead("Camber", "angle", (side) => side.camber),
  straightAhead("Caster", "angle", (side) => side.caster),
  straightAhead("Kingpin inclination", "angle", (side) => side.kingpinInclination),
  straightAhead("Toe", "angle", (side) => side.toe),
  straightAhead("Scrub radius", "length", (side) => side.scrubRadius),
  straightAhead("Mechanical trail", "length", (side) => side.mechanicalTrail),
];

/** Whether any of the values differs from the first. */
export function differs(values: readonly (number | null)[]): boolean {
  const [first] = values;
  return values.some(
    (value) =>
      (value === null) !== (first === null || first === undefined) ||
      (value !== null && first != null && !readsAlike(value, first)),
  );
}

/** What follows from a knuckle and is turned by hardly anything else. */
const OF_KNUCKLE = ["Camber", "Kingpin inclination", "Scrub radius", "Mechanical trail"];

/** What a knuckle does to the wheel, in a sentence beside its fields: `Now, as measured: camber 0.28°, kingpin inclination 8.34°, …`. */
export function knuckleSentence(model: Model, format: LengthFormat): string {
  const told = NUMBERS.filter(({ name }) => OF_KNUCKLE.includes(name)).map(
    (number) => `${number.name.toLowerCase()} ${comparedText(number.read(model), number, format)}`,
  );
  return `Now, as measured and straight ahead: ${told.join(", ")}.`;
}

/** A number as it stands in its cell; a dash where there is none. */
export function comparedText(
  value: number | null,
  { measure }: Pick<ComparedNumber, "measure">,
  format: LengthFormat,
): string {
  if (value === null) return "–";
  switch (measure) {
    case "angle":
      return withMinus(formatAngle(value, 2));
    case "length":
      return lengthText(value, format);
  }
}

/** How much it differs from the first truck's: `(+1/2 in)`; "" where both read the same, or one of them has none. */
export function differenceText(
  value: number | null,
  first: number | null,
  number: Pick<ComparedNumber, "measure">,
  format: LengthFormat,
): string {
  if (value === null || first === null || !differs([first, value])) return "";
  const text = comparedText(value - first, number, format);
  // What reads as nothing is nothing.
  if (/^−?0(\.0+)?(°| )/.test(text)) return "";
  return `(${value > first ? "+" : ""}${text})`;
}

/** What a tire given by its size measures on the truck's rim, and why: the size alone has another width. "" = given otherwise. */
export function tireSentence({ setup, tire }: Model, format: LengthFormat): string {
  if (setup.tire.kind !== "size") return "";
  const text = (mm: number) => lengthText(mm, format);
  return `On this rim, ${text(setup.wheel.rimWidth)} wide: section width ${text(tire.sectionWidth)}, diameter ${text(2 * tire.freeRadius)}. A wider rim spreads a tire by 0.4 of what it is wider.`;
}
