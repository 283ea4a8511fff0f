import * as z from "zod";
import { parseAngle } from "../../../units/angle.ts";
import { parseLength } from "../../../units/parseLength.ts";
import { splitWithin } from "../../../units/withinText.ts";
import { block, list } from "../../fields/blockFields.ts";
import { fieldKinds } from "../../fields/fieldKinds.ts";
import { choiceField, lengthField, required, textField, tupleMend } from "../../fields/fields.ts";
import { MAX_READINGS, MAX_STATIONS } from "../../reading/limits.ts";
import { READING_KINDS, READING_SIZES } from "../../types/readingTypes.ts";
import { POINT_MEND } from "./readingPoint.ts";

/** A length or, of an arm's angle, degrees: which of them takes the reading's kind to tell. */
function measureField(description: string) {
  return z
    .union([z.number(), z.string()], {
      error: ({ input }) =>
        input === undefined ? required(description) : 'must be what was read, such as "9 3/8"',
    })
    .superRefine((value, context) => {
      const split = typeof value === "string" ? splitWithin(value) : null;
      const bare = split?.value ?? value;
      const length = parseLength(bare, "in");
      if (!length.ok && !parseAngle(bare).ok) context.addIssue({ code: "custom", message: length.mend });
    })
    .meta({ description })
    .register(fieldKinds, { kind: "text" });
}

function pointField(description: string) {
  return z
    .string({ error: ({ input }) => (input === undefined ? required(description) : POINT_MEND) })
    .meta({ description })
    .register(fieldKinds, { kind: "text" });
}

const stationField = z
  .tuple(
    [
      lengthField("ahead of the axle line, along the stick", "any", true),
      lengthField("up from the stick to the lip; less than 0 is down", "any", true),
      lengthField("in from the stick to the lip; less than 0 is out", "any", true),
    ],
    { error: tupleMend("a station along the stick", "three lengths, [ahead, height, inset]") },
  )
  .meta({
    description:
      'one station along the stick: ahead of the axle line, up from the stick, in from the stick; "" in one of them: not read yet',
  })
  .register(fieldKinds, { kind: "point" });

const readingField = block(
  "one reading; what it names tells its kind: between, height, offset, ahead, angle, size, plumb or stations",
  {
    between: z
      .tuple([pointField("one end of the tape"), pointField("the other end of the tape")], {
        error: tupleMend(
          "the two ends of the tape",
          'two points, such as ["lowerArm.ballJoint", "upperArm.ballJoint"]',
        ),
      })
      .meta({ description: "tape from one point straight to another" })
      .optional(),
    height: pointField("a point whose height above the floor was read").optional(),
    offset: pointField("a point whose distance outboard was read, square to the truck").optional(),
    from: choiceField(
      "what an offset was read from: the centerline or the frame's outer face; default centerline",
      ["centerline", "frame"],
    ).optional(),
    ahead: pointField(
      "a point whose distance ahead of the axle line was read; less than 0 is behind",
    ).optional(),
    angle: choiceField(
      "the arm whose angle was read in the front view, pivots to ball joint against level, + = ball joint lower",
      ["lowerArm", "upperArm"],
    ).optional(),
    size: choiceField("a size of the truck, the tire or the wheel", READING_SIZES).optional(),
    plumb: pointField("a point from which a plumb bob was dropped to the floor").optional(),
    mark: textField("name of the mark on the floor where the bob met it; other readings name it").optional(),
    stations: list("a lip read at stations along a level stick that lies along the truck", stationField, {
      most: MAX_STATIONS,
    }).optional(),
    part: textField("name of the body part whose points the stations are; default fender lip").optional(),
    stick: block("where the stick lies", {
      offset: lengthField('its inboard edge outboard of the centerline; "" = not read yet', "positive", true),
      height: lengthField('its upper edge above the floor; "" = not read yet', "notNegative", true),
    }).optional(),
    is: measureField(
      "what was read: a length, or degrees of an angle; left out: it is asked for, not read yet",
    ).optional(),
    within: measureField("how well it is known, one standard deviation; default by its kind").optional(),
    leftOut: z
      .boolean({ error: "must be true or false" })
      .meta({
        description: "left out to try without it: it is kept, and no point is made of it; default false",
      })
      .optional(),
    side: choiceField(
      "the side that was read; across: first point on the left, second on the right; default left",
      ["left", "right", "across"],
    ).optional(),
  },
  { oneOf: READING_KINDS.map((kind) => ({ required: [kind] })) },
);

/** Readings, as typed. */
export const readingsField = list(
  "what was read on the truck with tape, plumb bob and angle finder: `measure` makes the points of the truck of it; default none",
  readingField,
  { most: MAX_READINGS },
);

export type ReadingsAsTyped = z.infer<typeof readingsField>;
export type ReadingAsTyped = ReadingsAsTyped[number];
