import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { lengthField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { DEFAULT_WHEELBASE } from "../types/defaults.ts";
import type { Setup } from "../types/types.ts";
import { armField, resolveArm } from "./arm.ts";
import { bodyField, resolveBody } from "./body.ts";
import { resolveSteering, steeringField } from "./steering.ts";

/** The truck, as typed. */
export const truckField = block(
  "the truck as measured: vehicle axes X forward, Y left, Z up; origin on the floor, on the center plane, under the front axle line; points of the left side",
  {
    wheelbase: lengthField(
      "front to rear axle; the turning circle needs it, and a floor whose rear stays",
      "positive",
    ).optional(),
    upperArm: armField("upper"),
    lowerArm: armField("lower"),
    steering: steeringField,
    body: bodyField.optional(),
  },
);

export type TruckAsTyped = z.infer<typeof truckField>;

/** The truck in mm and radians. Null = something was wrong before or is now; each sound block is still looked at. */
export function resolveTruck(typed: TruckAsTyped, reading: BlockReading): Setup["truck"] | null {
  const upperArm = reading.isSound("upperArm")
    ? resolveArm(typed.upperArm, reading.inside("upperArm"))
    : null;
  const lowerArm = reading.isSound("lowerArm")
    ? resolveArm(typed.lowerArm, reading.inside("lowerArm"))
    : null;
  const steering = reading.isSound("steering")
    ? resolveSteering(typed.steering, reading.inside("steering"))
    : null;
  const wheelbase = reading.isSound("wheelbase")
    ? reading.lengthOr(DEFAULT_WHEELBASE, typed.wheelbase, "wheelbase")
    : DEFAULT_WHEELBASE;
  const body = Array.isArray(typed.body) ? resolveBody(typed.body, reading.inside("body")) : [];
  return upperArm && lowerArm && steering ? { wheelbase, upperArm, lowerArm, steering, body } : null;
}
