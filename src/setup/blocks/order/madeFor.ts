import type * as z from "zod";
import { block } from "../../fields/blockFields.ts";
import { lengthField, pointField } from "../../fields/fields.ts";
import type { BlockReading } from "../../reading/blockReading.ts";
import type { OrderedArm, OrderedWheel } from "../../types/orderTypes.ts";
import { boltPatternField, boltPatternOf, threadField, threadOf } from "./boltedNotations.ts";

/** The wheel of an order, as typed. */
export const orderedWheelField = block(
  "the wheel the knuckle is made for; writes the wheel block; one of backspacing and offset",
  {
    rimDiameter: lengthField("nominal rim diameter, at the bead seat", "positive").optional(),
    rimWidth: lengthField(
      "nominal rim width, between the flanges where the beads sit",
      "positive",
    ).optional(),
    backspacing: lengthField("mounting face to inboard rim edge", "notNegative").optional(),
    offset: lengthField("mounting face to the wheel's center plane, + = face outboard of it").optional(),
    barrelDiameter: lengthField(
      "diameter of the rim's barrel, inside which there is room",
      "positive",
    ).optional(),
    boltPattern: boltPatternField("its bolt holes, such as 5x5, 6 x 5 1/2 or 5x127").optional(),
    centerBore: lengthField("diameter of the hole in its middle", "positive").optional(),
  },
);

/** mm. */
export function resolveOrderedWheel(
  typed: z.infer<typeof orderedWheelField> = {},
  reading: BlockReading,
): OrderedWheel {
  if (typed.backspacing !== undefined && typed.offset !== undefined)
    reading.issue(["offset"], typed.offset, "give backspacing or offset, not both");
  return {
    rimDiameter: reading.lengthOr(null, typed.rimDiameter, "rimDiameter"),
    rimWidth: reading.lengthOr(null, typed.rimWidth, "rimWidth"),
    backspacing: reading.lengthOr(null, typed.backspacing, "backspacing"),
    offset: reading.lengthOr(null, typed.offset, "offset"),
    barrelDiameter: reading.sizeOr(null, typed.barrelDiameter, "barrelDiameter"),
    boltPattern: boltPatternOf(typed.boltPattern),
    centerBore: reading.lengthOr(null, typed.centerBore, "centerBore"),
  };
}

/** Steering arm of an order, as typed. */
export const orderedArmField = block("the steering arm and the rod end screwed into it", {
  tieRodEnd: pointField(
    "center of the outer tie rod end in the knuckle frame; default where the base knuckle has it",
  ).optional(),
  thread: threadField("thread in the arm, such as 5/8-18").optional(),
  rodEndThread: threadField("thread of the rod end; default the arm's").optional(),
  engagement: lengthField("length of rod end thread that is screwed into the arm", "positive").optional(),
  jamNut: lengthField("thickness of the jam nut", "positive").optional(),
  shank: lengthField("length of the rod end's threaded shank", "positive").optional(),
});

/** mm. */
export function resolveOrderedArm(
  typed: z.infer<typeof orderedArmField> = {},
  reading: BlockReading,
): OrderedArm {
  return {
    tieRodEnd: typed.tieRodEnd === undefined ? null : reading.point(typed.tieRodEnd, "tieRodEnd"),
    thread: threadOf(typed.thread),
    rodEndThread: threadOf(typed.rodEndThread),
    engagement: reading.lengthOr(null, typed.engagement, "engagement"),
    jamNut: reading.lengthOr(null, typed.jamNut, "jamNut"),
    shank: reading.lengthOr(null, typed.shank, "shank"),
  };
}
