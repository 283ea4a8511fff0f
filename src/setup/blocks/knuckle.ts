import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { angleField, lengthField, pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MIN_SEPARATION } from "../reading/limits.ts";
import { DEFAULT_PIN_LEAD } from "../types/defaults.ts";
import type { KnuckleSetup } from "../types/types.ts";

/** The knuckle, as typed, in its own frame. */
export const knuckleField = block(
  "the knuckle in its own frame: origin at the lower ball joint center, z up the steering axis, y outboard, x forward",
  {
    span: lengthField("lower to upper ball joint center", "positive"),
    pinHeight: lengthField(
      "along the steering axis from the lower ball joint to where the pin axis crosses, seen from the front",
    ),
    pinLead: lengthField("how far the pin axis runs ahead of the steering axis; default 0").optional(),
    pinAngle: angleField("pin axis below the normal to the steering axis, degrees (the included angle)", {
      above: -45,
      below: 45,
    }),
    hubFace: lengthField(
      "from the steering axis to the wheel mounting face, along the pin, at pin height",
      "positive",
    ),
    steeringArm: pointField(
      "center of the outer tie rod end in the knuckle frame; x less than 0 is behind the axle",
    ),
  },
);

export type KnuckleAsTyped = z.infer<typeof knuckleField>;

/** The knuckle in mm and radians. Refuses a tie rod end that is neither ahead of nor behind the steering axis. */
export function resolveKnuckle(typed: KnuckleAsTyped, reading: BlockReading): KnuckleSetup {
  const steeringArm = reading.point(typed.steeringArm, "steeringArm");
  if (Math.abs(steeringArm[0]) < MIN_SEPARATION) {
    const mend = "must be at least 1 mm ahead of (more than 0) or behind (less than 0) the steering axis";
    reading.issue(["steeringArm", 0], typed.steeringArm[0], mend);
  }
  return {
    span: reading.length(typed.span, "span"),
    pinHeight: reading.length(typed.pinHeight, "pinHeight"),
    pinLead: reading.lengthOr(DEFAULT_PIN_LEAD, typed.pinLead, "pinLead"),
    pinAngle: reading.angle(typed.pinAngle),
    hubFace: reading.length(typed.hubFace, "hubFace"),
    steeringArm,
  };
}
