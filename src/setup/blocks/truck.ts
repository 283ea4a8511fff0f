import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { lengthField, pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MIN_SEPARATION } from "../reading/limits.ts";
import { difference, distanceToLine, norm } from "../reading/pointMath.ts";
import { DEFAULT_WHEELBASE } from "../types/defaults.ts";
import type { ArmSetup } from "../types/truckTypes.ts";
import type { Setup } from "../types/types.ts";
import { bodyField, resolveBody } from "./body.ts";
import { resolveSteering, steeringField } from "./steering.ts";

/** The range of wheel travel, as typed. */
export const travelField = block(
  "range of the wheel center's vertical movement from where the truck was measured",
  {
    droop: lengthField("lowest wheel position, 0 or negative", "notPositive"),
    bump: lengthField("highest wheel position, 0 or positive", "notNegative"),
  },
);

export type TravelAsTyped = z.infer<typeof travelField>;

/** The range in mm. */
export function resolveTravel(typed: TravelAsTyped, reading: BlockReading): Setup["travel"] {
  return { droop: reading.length(typed.droop, "droop"), bump: reading.length(typed.bump, "bump") };
}

/** A control arm of the left side, as typed. */
export function armField(name: "upper" | "lower") {
  return block(`${name} control arm of the left side, as measured on the truck`, {
    frontPivot: pointField(`center of the ${name} arm's front pivot, vehicle axes`),
    rearPivot: pointField(`center of the ${name} arm's rear pivot, vehicle axes`),
    ballJoint: pointField(`center of the ${name} ball joint where the truck was measured, vehicle axes`),
  });
}

export type ArmAsTyped = z.infer<ReturnType<typeof armField>>;

/** The arm in mm. Refuses pivots or a ball joint from which no axis and no arm can be made. */
function resolveArm(typed: ArmAsTyped, reading: BlockReading): ArmSetup {
  const frontPivot = reading.point(typed.frontPivot, "frontPivot");
  const rearPivot = reading.point(typed.rearPivot, "rearPivot");
  const ballJoint = reading.point(typed.ballJoint, "ballJoint");
  if (ballJoint[1] <= 0) {
    reading.issue(
      ["ballJoint"],
      typed.ballJoint,
      "must be left of the center plane (y more than 0): give the left side",
    );
  }
  const axis = difference(frontPivot, rearPivot);
  if (norm(axis) < MIN_SEPARATION) {
    reading.issue(
      ["rearPivot"],
      typed.rearPivot,
      "is within 1 mm of frontPivot; the two must be apart to give the arm its axis",
    );
  } else if (distanceToLine(ballJoint, rearPivot, axis) < MIN_SEPARATION) {
    reading.issue(
      ["ballJoint"],
      typed.ballJoint,
      "lies on the line through the pivots, so the arm has no length; measure it again",
    );
  }
  return { frontPivot, rearPivot, ballJoint };
}

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
