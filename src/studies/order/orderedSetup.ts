import { setAt } from "../../setup/reading/setAt.ts";
import {
  DEFAULT_RADII,
  DEFAULT_ROTOR_DIAMETER,
  DEFAULT_ROTOR_INBOARD,
  DEFAULT_ROTOR_THICKNESS,
} from "../../setup/types/defaults.ts";
import type { BaseKnuckle } from "../../setup/types/orderTypes.ts";
import type { HardwareSetup, KnuckleSetup, RotorSetup, Setup } from "../../setup/types/types.ts";
import { offsetFromBackspacing } from "../../units/wheelOffset.ts";
import type { OrderedField, OrderedValue } from "./orderedFields.ts";

/** The setup as it is once the order is written into its blocks; what the order leaves open is the blocks'. */
export function orderedSetup(setup: Setup, fields: readonly OrderedField[]): Setup {
  const touches = (...keys: string[]) => fields.some(({ path }) => keys.every((key, i) => path[i] === key));
  let made: Setup = setup;
  if (touches("hardware")) made = { ...made, hardware: made.hardware ?? PLAIN_HARDWARE };
  if (made.hardware !== null && touches("hardware", "rotor"))
    made = { ...made, hardware: { ...made.hardware, rotor: made.hardware.rotor ?? PLAIN_ROTOR } };
  for (const { path, ordered } of fields) {
    if (path[1] !== "backspacing") made = setAt(made, path, plainValue(ordered)) as Setup;
  }
  const backspacing = fields.find(({ path }) => path[1] === "backspacing")?.ordered;
  if (backspacing?.kind !== "length") return made;
  const offset = offsetFromBackspacing(backspacing.mm, made.wheel.rimWidth);
  return { ...made, wheel: { ...made.wheel, offset } };
}

/** What stands in a setup, in mm and radians. */
function plainValue(value: OrderedValue): unknown {
  switch (value.kind) {
    case "length":
      return value.mm;
    case "angle":
      return value.rad;
    case "point":
      return value.point;
    case "word":
      return value.word;
  }
}

const PLAIN_ROTOR: RotorSetup = {
  diameter: DEFAULT_ROTOR_DIAMETER,
  thickness: DEFAULT_ROTOR_THICKNESS,
  inboard: DEFAULT_ROTOR_INBOARD,
};

const PLAIN_HARDWARE: HardwareSetup = {
  ...(Object.fromEntries(Object.entries(DEFAULT_RADII).map(([key, radius]) => [key, { radius }])) as Record<
    keyof typeof DEFAULT_RADII,
    { readonly radius: number }
  >),
  rotor: null,
  caliper: null,
};

/** The base knuckle, where all of its numbers are given; else null. */
export function wholeBase(base: BaseKnuckle): KnuckleSetup | null {
  const { span, pinHeight, pinAngle, hubFace, steeringArm } = base;
  if (span === null || pinHeight === null || pinAngle === null || hubFace === null || steeringArm === null)
    return null;
  return { span, pinHeight, pinAngle, hubFace, steeringArm, pinLead: base.pinLead ?? 0 };
}
