import * as z from "zod";
import { block, oneOfBlocks } from "../fields/blockFields.ts";
import { angleField, lengthField, numbersField, pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MIN_SEPARATION } from "../reading/limits.ts";
import { distanceToLine, unitOf } from "../reading/pointMath.ts";
import { DEFAULT_TURNING_AXIS, defaultInnerEndRight } from "../types/defaults.ts";
import type { SteeringSetup, TurningArmSetup } from "../types/truckTypes.ts";

/** A pitman or idler arm, as typed. Where it is, not mirrored. */
export function turningArmField(name: "pitman" | "idler") {
  return block(`${name} arm, where it stands straight ahead`, {
    pivot: pointField(`a point on the ${name} shaft's axis, vehicle axes`),
    axis: numbersField(
      `direction of the ${name} shaft, vehicle axes, any length; default straight up, [0, 0, 1]`,
      "a direction of three numbers, [x, y, z]",
    ).optional(),
    end: pointField(`center of the joint between ${name} arm and center link, vehicle axes`),
  });
}

export type TurningArmAsTyped = z.infer<ReturnType<typeof turningArmField>>;

/** The arm in mm with an axis of unit length. */
function resolveTurningArm(typed: TurningArmAsTyped, reading: BlockReading): TurningArmSetup {
  const pivot = reading.point(typed.pivot, "pivot");
  const end = reading.point(typed.end, "end");
  const axis = unitOf(typed.axis ?? DEFAULT_TURNING_AXIS);
  if (axis === null) {
    reading.issue(["axis"], typed.axis, "has no direction; for an upright shaft write [0, 0, 1]");
    return { pivot, end, axis: DEFAULT_TURNING_AXIS };
  }
  if (distanceToLine(end, pivot, axis) < MIN_SEPARATION) {
    reading.issue(["end"], typed.end, "lies on the shaft's axis, so the arm has no length; measure it again");
  }
  return { pivot, end, axis };
}

const rackField = block("rack steering: inner tie rod ends slide along Y", {
  type: z.literal("rack").meta({ description: "rack steering" }),
  innerEnd: pointField("center of the left inner tie rod end, straight ahead, vehicle axes"),
  stroke: lengthField("how far the rack moves to one side from straight ahead to full lock", "positive"),
});

const pitmanField = block("pitman-arm steering: pitman and idler arms joined by a center link", {
  type: z.literal("pitman").meta({ description: "pitman-arm steering" }),
  innerEnd: pointField(
    "center of the left inner tie rod end on the center link, straight ahead, vehicle axes",
  ),
  innerEndRight: pointField(
    "center of the right inner tie rod end, vehicle axes (y less than 0); default the mirror image of innerEnd",
  ).optional(),
  swing: angleField("how far the pitman arm turns to one side from straight ahead to full lock, degrees", {
    above: 0,
    below: 90,
  }),
  pitman: turningArmField("pitman"),
  idler: turningArmField("idler"),
});

/** The steering, as typed. */
export const steeringField = oneOfBlocks(
  "steering linkage of the truck",
  "type",
  ["rack", "pitman"],
  [rackField, pitmanField],
);

export type SteeringAsTyped = z.infer<typeof steeringField>;

/** The steering in mm and radians, defaults filled in. */
export function resolveSteering(typed: SteeringAsTyped, reading: BlockReading): SteeringSetup {
  const innerEnd = reading.point(typed.innerEnd, "innerEnd");
  if (typed.type === "rack")
    return { type: "rack", innerEnd, stroke: reading.length(typed.stroke, "stroke") };
  const innerEndRight = typed.innerEndRight
    ? reading.point(typed.innerEndRight, "innerEndRight")
    : defaultInnerEndRight(innerEnd);
  return {
    type: "pitman",
    innerEnd,
    innerEndRight,
    swing: reading.angle(typed.swing),
    pitman: resolveTurningArm(typed.pitman, reading.inside("pitman")),
    idler: resolveTurningArm(typed.idler, reading.inside("idler")),
  };
}
