import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MIN_SEPARATION } from "../reading/limits.ts";
import { difference, distanceToLine, norm } from "../reading/pointMath.ts";
import type { ArmSetup } from "../types/types.ts";

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
export function resolveArm(typed: ArmAsTyped, reading: BlockReading): ArmSetup {
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
