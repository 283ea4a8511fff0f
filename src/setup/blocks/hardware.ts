import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { choiceField, lengthField, pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import {
  DEFAULT_CALIPER_FRAME,
  DEFAULT_RADII,
  DEFAULT_ROTOR_DIAMETER,
  DEFAULT_ROTOR_INBOARD,
  DEFAULT_ROTOR_THICKNESS,
} from "../types/defaults.ts";
import type { CaliperSetup, HardwareSetup, RotorSetup } from "../types/types.ts";

/** Something round, given by its radius. `size` is its default, in words. */
function roundField(description: string, size: string) {
  return block(description, { radius: lengthField(`radius; default ${size}`, "notNegative").optional() });
}

const rotorField = block("the brake rotor, a solid disk square to the pin", {
  diameter: lengthField("outer diameter; default 11 in", "positive").optional(),
  thickness: lengthField("thickness across both faces; default 1 in", "positive").optional(),
  inboard: lengthField(
    "how far its outboard face lies inboard of the hub face, along the pin; default 1 3/4 in",
  ).optional(),
});

const caliperField = block("the brake caliper with its bracket, a solid box that rides on the knuckle", {
  frame: choiceField(
    "frame of min and max: knuckle (origin at the lower ball joint center, x forward, y outboard, z up the steering axis) or hub (origin at the middle of the hub face, x forward, y outboard along the pin, z up across it, so that the box moves with the hub face); default knuckle",
    ["knuckle", "hub"],
  ).optional(),
  min: pointField("corner with the least x, y and z"),
  max: pointField("corner with the greatest x, y and z"),
});

/** What moves with the front end, as typed. */
export const hardwareField = block(
  "what moves with the front end and might touch; without this block only body parts are measured, with {} everything here by its default except rotor and caliper",
  {
    upperArm: roundField("upper arm: a leg from each pivot to the ball joint", "5/8 in").optional(),
    lowerArm: roundField("lower arm: a leg from each pivot to the ball joint", "3/4 in").optional(),
    upperBallJoint: roundField("upper ball joint's housing: a ball about its center", "1 in").optional(),
    lowerBallJoint: roundField("lower ball joint's housing: a ball about its center", "1 1/8 in").optional(),
    steeringArm: roundField("steering arm: knuckle to outer tie rod end", "1/2 in").optional(),
    tieRod: roundField("tie rod: inner to outer end", "7/16 in").optional(),
    tieRodEnd: roundField("outer tie rod end: a ball about its center", "3/4 in").optional(),
    knuckle: roundField("body of the knuckle: from ball joint to ball joint", "3/4 in").optional(),
    rotor: rotorField.optional(),
    caliper: caliperField.optional(),
  },
);

export type HardwareAsTyped = z.infer<typeof hardwareField>;

/** The block in mm, defaults filled in; null = the setup has none. */
export function resolveHardware(
  typed: HardwareAsTyped | undefined,
  reading: BlockReading,
): HardwareSetup | null {
  if (typed === undefined) return null;
  const round = (key: keyof typeof DEFAULT_RADII) => ({
    radius: reading.lengthOr(DEFAULT_RADII[key], typed[key]?.radius, key, "radius"),
  });
  return {
    upperArm: round("upperArm"),
    lowerArm: round("lowerArm"),
    upperBallJoint: round("upperBallJoint"),
    lowerBallJoint: round("lowerBallJoint"),
    steeringArm: round("steeringArm"),
    tieRod: round("tieRod"),
    tieRodEnd: round("tieRodEnd"),
    knuckle: round("knuckle"),
    rotor: typed.rotor ? resolveRotor(typed.rotor, reading.inside("rotor")) : null,
    caliper: typed.caliper ? resolveCaliper(typed.caliper, reading.inside("caliper")) : null,
  };
}

function resolveRotor(typed: z.infer<typeof rotorField>, reading: BlockReading): RotorSetup {
  return {
    diameter: reading.sizeOr(DEFAULT_ROTOR_DIAMETER, typed.diameter, "diameter"),
    thickness: reading.sizeOr(DEFAULT_ROTOR_THICKNESS, typed.thickness, "thickness"),
    inboard: reading.lengthOr(DEFAULT_ROTOR_INBOARD, typed.inboard, "inboard"),
  };
}

function resolveCaliper(typed: z.infer<typeof caliperField>, reading: BlockReading): CaliperSetup {
  const min = reading.point(typed.min, "min");
  const max = reading.point(typed.max, "max");
  for (const axis of [0, 1, 2] as const) {
    if (min[axis] < max[axis]) continue;
    reading.issue(["max", axis], typed.max[axis], `must be more than min[${axis}]`);
  }
  return { frame: typed.frame ?? DEFAULT_CALIPER_FRAME, min, max };
}
