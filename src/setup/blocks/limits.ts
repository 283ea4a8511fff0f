import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { angleField, lengthField, numbersField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { DEFAULT_TIE_ROD_END_MISALIGNMENT } from "../types/defaults.ts";
import type { LimitsSetup, RodEndLimit } from "../types/limitsTypes.ts";
import type { SteeringSetup } from "../types/types.ts";
import { ballJointLimitField, limitDirection, resolveBallJointLimit } from "./limitsBallJoint.ts";
import { resolveShockLimit, shockLimitField } from "./limitsShock.ts";

function rodEndField(description: string, stud: string) {
  return block(description, {
    misalignment: angleField("how far it may lean either way, degrees; default 25", {
      above: 0,
      below: 90,
    }).optional(),
    stud: numbersField(stud, "a direction of three numbers, [x, y, z]").optional(),
  });
}

/** What joints, stops and shocks allow, as typed. */
export const limitsField = block(
  "how far joints, stops and shocks let the front end go; what is left out is not checked",
  {
    upperBallJoint: ballJointLimitField("upper").optional(),
    lowerBallJoint: ballJointLimitField("lower").optional(),
    outerTieRodEnd: rodEndField(
      "how far the outer tie rod end may lean off square to the tie rod",
      "direction of its stud in the knuckle frame, any length; default along the steering axis, [0, 0, 1]",
    ).optional(),
    innerTieRodEnd: rodEndField(
      "how far the inner tie rod end may lean: of a rack, the tie rod off the rack's line; on a center link, its stud off square to the tie rod",
      "direction of its stud on the center link, or of a rack's inner joint, vehicle axes, straight ahead, any length; default upright, of a rack across the truck",
    ).optional(),
    bumpStop: block("the bump stop", { travel: lengthField("wheel travel at which it is met") }).optional(),
    droopStrap: block("the droop strap, or whatever stops the wheel going down", {
      travel: lengthField("wheel travel at which it is tight"),
    }).optional(),
    shock: shockLimitField.optional(),
    steeringStop: block("the steering stops", {
      angle: angleField("steer angle of a wheel, either way, at which its stop is met, degrees", {
        above: 0,
        below: 90,
      }),
    }).optional(),
    rackStroke: lengthField(
      "how far the rack can move to one side from straight ahead; for rack steering",
      "positive",
    ).optional(),
    pitmanSwing: angleField(
      "how far the pitman arm can turn to one side from straight ahead, degrees; for pitman-arm steering",
      { above: 0, below: 90 },
    ).optional(),
  },
);

export type LimitsAsTyped = z.infer<typeof limitsField>;

/**
 * The block in mm and radians; null = the setup has none.
 * @param steering the truck's linkage; undefined = unsound, its own issue is told already
 */
export function resolveLimits(
  typed: LimitsAsTyped | undefined,
  reading: BlockReading,
  steering: SteeringSetup["type"] | undefined,
): LimitsSetup | null {
  if (typed === undefined) return null;
  if (typed.rackStroke !== undefined && steering === "pitman")
    reading.issue(["rackStroke"], typed.rackStroke, "this truck has no rack; give pitmanSwing instead");
  if (typed.pitmanSwing !== undefined && steering === "rack")
    reading.issue(["pitmanSwing"], typed.pitmanSwing, "this truck has a rack; give rackStroke instead");
  const bumpStop = reading.lengthOr(null, typed.bumpStop?.travel, "bumpStop", "travel");
  const droopStrap = reading.lengthOr(null, typed.droopStrap?.travel, "droopStrap", "travel");
  if (bumpStop !== null && droopStrap !== null && !(droopStrap < bumpStop))
    reading.issue(["droopStrap", "travel"], typed.droopStrap?.travel, "must be less than bumpStop.travel");
  const { upperBallJoint, lowerBallJoint, outerTieRodEnd, innerTieRodEnd, shock } = typed;
  return {
    upperBallJoint: upperBallJoint
      ? resolveBallJointLimit(upperBallJoint, reading.inside("upperBallJoint"))
      : null,
    lowerBallJoint: lowerBallJoint
      ? resolveBallJointLimit(lowerBallJoint, reading.inside("lowerBallJoint"))
      : null,
    outerTieRodEnd: outerTieRodEnd ? resolveRodEnd(outerTieRodEnd, reading.inside("outerTieRodEnd")) : null,
    innerTieRodEnd: innerTieRodEnd ? resolveRodEnd(innerTieRodEnd, reading.inside("innerTieRodEnd")) : null,
    bumpStop,
    droopStrap,
    shock: shock ? resolveShockLimit(shock, reading.inside("shock")) : null,
    steeringStop: typed.steeringStop ? reading.angle(typed.steeringStop.angle) : null,
    steeringStroke:
      typed.rackStroke !== undefined
        ? reading.length(typed.rackStroke, "rackStroke")
        : typed.pitmanSwing !== undefined
          ? reading.angle(typed.pitmanSwing)
          : null,
  };
}

function resolveRodEnd(typed: z.infer<ReturnType<typeof rodEndField>>, reading: BlockReading): RodEndLimit {
  return {
    misalignment:
      typed.misalignment === undefined ? DEFAULT_TIE_ROD_END_MISALIGNMENT : reading.angle(typed.misalignment),
    stud: limitDirection(typed.stud, "stud", reading),
  };
}
