import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { angleField, choiceField, lengthField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import type { Confirmed } from "../types/types.ts";
import { UNUSUAL_CHECKS } from "../types/unusualChecks.ts";

/** What somebody said is so, as typed. */
export const confirmedField = list(
  "unusual values that somebody checked again and confirmed; each confirms that value alone; default none",
  block(
    "one unusual value that is right, as a length, an angle or a number",
    {
      check: choiceField("the check that finds it unusual", UNUSUAL_CHECKS),
      at: textField("the key it is about, such as knuckle.hubFace"),
      length: lengthField("the value found unusual, where it is a length").optional(),
      angle: angleField("the value found unusual, degrees, where it is an angle", {
        above: -360,
        below: 360,
      }).optional(),
      number: z
        .number({ error: "must be a number" })
        .meta({ description: "the value found unusual, where it is neither" })
        .optional(),
    },
    { oneOf: [{ required: ["length"] }, { required: ["angle"] }, { required: ["number"] }] },
  ),
);

export type ConfirmedAsTyped = z.infer<typeof confirmedField>;

/** The confirmed values in mm, radians or as they are. */
export function resolveConfirmed(typed: ConfirmedAsTyped, reading: BlockReading): readonly Confirmed[] {
  return typed.flatMap(({ check, at, length, angle, number }, index): readonly Confirmed[] => {
    if (!reading.isSound(index)) return [];
    if ([length, angle, number].filter((one) => one !== undefined).length !== 1) {
      reading.issue(
        [index, "length"],
        length,
        "required: give the value as length, as angle or as number, one of them",
      );
      return [];
    }
    if (number !== undefined) return [{ check, at, kind: "number", value: number }];
    const value = length !== undefined ? reading.length(length, index, "length") : reading.angle(angle!);
    return [{ check, at, kind: length !== undefined ? "length" : "angle", value }];
  });
}

/** Marks the numbers of a setup that began as an example: all of them, but those that somebody has said are the truck's. */
export const fromExampleField = block(
  "this setup began as an example: its numbers are an example's, except for those under mine",
  {
    of: textField("name of the example"),
    mine: z
      .record(z.string(), z.boolean(), {
        error: 'must be a list of places with true or false, such as { "knuckle.hubFace": true }',
      })
      .meta({
        description: "places whose numbers were measured on this truck; a place counts for all inside it",
      })
      .optional(),
    read: list(
      "places whose numbers were worked out of this truck's readings; rewritten with each reading; default none",
      textField("a place, such as truck.lowerArm.ballJoint[2]"),
    ).optional(),
  },
);
