import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { numbersField, pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MIN_SEPARATION } from "../reading/limits.ts";
import { distanceToLine, unitOf } from "../reading/pointMath.ts";
import { DEFAULT_TURNING_AXIS } from "../types/defaults.ts";
import type { TurningArmSetup } from "../types/types.ts";

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
export function resolveTurningArm(typed: TurningArmAsTyped, reading: BlockReading): TurningArmSetup {
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
