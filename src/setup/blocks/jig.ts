import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { angleField, lengthField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { JigSetup } from "../types/asBuiltTypes.ts";
import { DEFAULT_JIG, DEFAULT_JIG_TOLERANCES } from "../types/defaults.ts";

const tolerancesField = block("how far a reading may be from what the sheet asks for, either way", {
  tape: lengthField("either tape, straightedge to straightedge; default 1/16 in", "positive").optional(),
  difference: lengthField("the tape behind less the tape in front; default 1/16 in", "positive").optional(),
  faceAngle: angleField("the angle finder on the face, degrees; default 0.25", {
    above: 0,
    below: 10,
  }).optional(),
  height: lengthField("heights of the pin along the ball joint line; default 1/16 in", "positive").optional(),
  lead: lengthField("the pin ahead of the ball joint line; default 1/16 in", "positive").optional(),
  span: lengthField("ball joint center to ball joint center; default 1/16 in", "positive").optional(),
  steeringArm: lengthField(
    "each place and each distance of the outer tie rod end; default 1/16 in",
    "positive",
  ).optional(),
});

/** How the jig is laid out, as typed. */
export const jigField = block(
  "the jig the knuckle is welded in: a straightedge along the ball joint line at pin height, another on the hub face, a tape between them",
  {
    halfLength: lengthField(
      "from the ball joint line to the marks in front and behind at which the tape is read; default 10 in",
      "positive",
    ).optional(),
    jointHeight: lengthField(
      "lower ball joint center above the jig's table; default 0: heights are read from that center",
    ).optional(),
    pinEnd: lengthField(
      "how far outboard of the hub face, along the pin, the height of the pin's outer end is read; default 3 in",
      "positive",
    ).optional(),
    toe: angleField(
      "toe built into the knuckle on purpose: the pin turned toward toe-in from square to the jig's straightedge, degrees; the tie rod takes it out again; default 0",
      { above: -20, below: 20 },
    ).optional(),
    tolerances: tolerancesField.optional(),
  },
);

export type JigAsTyped = z.infer<typeof jigField>;

/** The jig in mm and radians, defaults filled in: every knuckle can be jigged, so there always is one. */
export function resolveJig(typed: JigAsTyped | undefined, reading: BlockReading): JigSetup {
  const tolerances = reading.inside("tolerances");
  const within = (key: Exclude<keyof typeof DEFAULT_JIG_TOLERANCES, "faceAngle">) =>
    tolerances.lengthOr(DEFAULT_JIG_TOLERANCES[key], typed?.tolerances?.[key], key);
  const faceAngle = typed?.tolerances?.faceAngle;
  return {
    halfLength: reading.lengthOr(DEFAULT_JIG.halfLength, typed?.halfLength, "halfLength"),
    jointHeight: reading.lengthOr(DEFAULT_JIG.jointHeight, typed?.jointHeight, "jointHeight"),
    pinEnd: reading.lengthOr(DEFAULT_JIG.pinEnd, typed?.pinEnd, "pinEnd"),
    toe: typed?.toe === undefined ? DEFAULT_JIG.toe : reading.angle(typed.toe),
    tolerances: {
      tape: within("tape"),
      difference: within("difference"),
      faceAngle: faceAngle === undefined ? DEFAULT_JIG_TOLERANCES.faceAngle : reading.angle(faceAngle),
      height: within("height"),
      lead: within("lead"),
      span: within("span"),
      steeringArm: within("steeringArm"),
    },
  };
}
