import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { angleField, lengthField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { DEFAULT_POINTS_WITHIN } from "../types/defaults.ts";
import type { OddsSetup } from "../types/withinTypes.ts";

const within = (of: string, byDefault: string) =>
  lengthField(`one standard deviation of ${of}; default ${byDefault}`, "notNegative").optional();

const tireWithinField = block(
  "how far a tire may be from the dimensions its size stands for; 0 = not at all",
  {
    sectionWidth: within("the section width", "2% of it: half of what the tire standard allows"),
    diameter: within(
      "the overall diameter",
      "2% of twice the section height: half of what the tire standard allows",
    ),
  },
);

const HALF = "half of the jig's tolerance";

const knuckleWithinField = block(
  "how far the knuckle may be from its numbers once it is built; 0 = not at all",
  {
    span: within("the ball joint span", HALF),
    pinHeight: within("the pin height", HALF),
    pinLead: within("the pin lead", HALF),
    pinAngle: angleField(`one standard deviation of the pin angle, degrees; default ${HALF}`, {
      above: -1e-9,
      below: 10,
    }).optional(),
    hubFace: within("the hub face", HALF),
    steeringArm: within("each place of the outer tie rod end", HALF),
  },
);

/** How far off numbers may be that tell it not themselves, as typed. */
export const oddsField = block(
  "for the odds of clearing: how far off numbers may be that have no ± of their own",
  {
    points: lengthField(
      "one standard deviation of each coordinate of arms, steering, paths and boxes; default 0: what has no ± counts as exact",
      "notNegative",
    ).optional(),
    tire: tireWithinField.optional(),
    knuckle: knuckleWithinField.optional(),
  },
);

/** The block in mm and radians; null in it = by default. */
export function resolveOdds(typed: z.infer<typeof oddsField> | undefined, reading: BlockReading): OddsSetup {
  const tire = reading.inside("tire");
  const knuckle = reading.inside("knuckle");
  const ofKnuckle = (key: Exclude<keyof OddsSetup["knuckle"], "pinAngle">) =>
    knuckle.lengthOr(null, typed?.knuckle?.[key], key);
  const pinAngle = typed?.knuckle?.pinAngle;
  return {
    points: reading.lengthOr(DEFAULT_POINTS_WITHIN, typed?.points, "points"),
    tire: {
      sectionWidth: tire.lengthOr(null, typed?.tire?.sectionWidth, "sectionWidth"),
      diameter: tire.lengthOr(null, typed?.tire?.diameter, "diameter"),
    },
    knuckle: {
      span: ofKnuckle("span"),
      pinHeight: ofKnuckle("pinHeight"),
      pinLead: ofKnuckle("pinLead"),
      pinAngle: pinAngle === undefined ? null : Math.max(0, reading.angle(pinAngle)),
      hubFace: ofKnuckle("hubFace"),
      steeringArm: ofKnuckle("steeringArm"),
    },
  };
}
