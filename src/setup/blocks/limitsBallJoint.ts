import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { angleField, numbersField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { unitOf } from "../reading/pointMath.ts";
import { DEFAULT_BALL_JOINT_CONE } from "../types/defaults.ts";
import type { BallJointLimit } from "../types/limitsTypes.ts";
import type { Point } from "../types/types.ts";

const SWING = { above: 0, below: 90 } as const;

/** How far a ball joint may lean, as typed; `{}` = the default cone, centered at travel 0. */
export function ballJointLimitField(name: "upper" | "lower") {
  return block(`how far the ${name} ball joint may lean: its stud off the housing's axis`, {
    cone: angleField("half angle of the cone the stud may lean in, degrees; default 20", SWING).optional(),
    inOut: angleField(
      "the same seen along the arm's pivot line, where the stud swings in and out as the arm does, degrees; not checked without it",
      SWING,
    ).optional(),
    foreAft: angleField(
      "the same seen square to that, where the stud leans forward and back, degrees; not checked without it",
      SWING,
    ).optional(),
    stud: numbersField(
      "direction of the stud in the knuckle frame, any length; default along the steering axis, [0, 0, 1]",
      "a direction of three numbers, [x, y, z]",
    ).optional(),
    housing: numbersField(
      "direction of the housing's axis, vehicle axes, with the arm as measured, any length; default centered on the stud at travel 0, straight ahead",
      "a direction of three numbers, [x, y, z]",
    ).optional(),
  });
}

export type BallJointLimitAsTyped = z.infer<ReturnType<typeof ballJointLimitField>>;

/** The limit in radians, directions of unit length. */
export function resolveBallJointLimit(typed: BallJointLimitAsTyped, reading: BlockReading): BallJointLimit {
  return {
    cone: typed.cone === undefined ? DEFAULT_BALL_JOINT_CONE : reading.angle(typed.cone),
    inOut: typed.inOut === undefined ? null : reading.angle(typed.inOut),
    foreAft: typed.foreAft === undefined ? null : reading.angle(typed.foreAft),
    stud: limitDirection(typed.stud, "stud", reading),
    housing: limitDirection(typed.housing, "housing", reading),
  };
}

/** A typed direction with length 1; null when none was typed. */
export function limitDirection(typed: Point | undefined, key: string, reading: BlockReading): Point | null {
  if (typed === undefined) return null;
  const unit = unitOf(typed);
  if (unit === null) reading.issue([key], typed, "has no direction; write such as [0, 0, 1]");
  return unit;
}
