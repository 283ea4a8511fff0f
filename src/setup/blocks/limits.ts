import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { angleField, choiceField, lengthField, numbersField, pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { unitOf } from "../reading/pointMath.ts";
import {
  DEFAULT_BALL_JOINT_CONE,
  DEFAULT_SHOCK_MOUNT,
  DEFAULT_TIE_ROD_END_MISALIGNMENT,
} from "../types/defaults.ts";
import type { BallJointLimit, LimitsSetup, RodEndLimit, ShockLimit } from "../types/limitsTypes.ts";
import type { Point, SteeringSetup } from "../types/truckTypes.ts";

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
function resolveBallJointLimit(typed: BallJointLimitAsTyped, reading: BlockReading): BallJointLimit {
  return {
    cone: typed.cone === undefined ? DEFAULT_BALL_JOINT_CONE : reading.angle(typed.cone),
    inOut: typed.inOut === undefined ? null : reading.angle(typed.inOut),
    foreAft: typed.foreAft === undefined ? null : reading.angle(typed.foreAft),
    stud: limitDirection(typed.stud, "stud", reading),
    housing: limitDirection(typed.housing, "housing", reading),
  };
}

/** A typed direction with length 1; null when none was typed. */
function limitDirection(typed: Point | undefined, key: string, reading: BlockReading): Point | null {
  if (typed === undefined) return null;
  const unit = unitOf(typed);
  if (unit === null) reading.issue([key], typed, "has no direction; write such as [0, 0, 1]");
  return unit;
}

/** The shock, as typed. */
const shockLimitField = block("the shock by its mounts and its shortest and longest length", {
  bodyMount: pointField("center of the mount on the body, vehicle axes"),
  lowerMount: pointField(
    "center of the lower mount: on the lower arm in vehicle axes as measured, on the knuckle in the knuckle frame",
  ),
  on: choiceField("what the lower mount is on; default lowerArm", ["lowerArm", "knuckle"]).optional(),
  compressed: lengthField("shortest length, mount center to mount center", "positive"),
  extended: lengthField("longest length, mount center to mount center", "positive"),
  diameter: lengthField(
    "diameter at its widest; measured against the wheel as a round body about the line between its mounts, its ends rounded beyond them; not measured without it",
    "positive",
  ).optional(),
});

/** The shock in mm. */
function resolveShockLimit(typed: z.infer<typeof shockLimitField>, reading: BlockReading): ShockLimit {
  const compressed = reading.length(typed.compressed, "compressed");
  const extended = reading.length(typed.extended, "extended");
  if (!(extended > compressed)) reading.issue(["extended"], typed.extended, "must be more than compressed");
  return {
    bodyMount: reading.point(typed.bodyMount, "bodyMount"),
    lowerMount: reading.point(typed.lowerMount, "lowerMount"),
    on: typed.on ?? DEFAULT_SHOCK_MOUNT,
    compressed,
    extended,
    diameter: reading.lengthOr(null, typed.diameter, "diameter"),
  };
}

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
