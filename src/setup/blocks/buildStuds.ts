import type * as z from "zod";
import { parseThread } from "../../units/threadCallout.ts";
import { block, list } from "../fields/blockFields.ts";
import { angleField, choiceField, lengthField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_MEMBERS } from "../reading/limits.ts";
import type { RodEndSetup, StudSetup } from "../types/buildTypes.ts";

const joint = choiceField("which joint it is at", ["lowerBallJoint", "upperBallJoint", "tieRodOuter"]);

const material = textField(
  "name of its material, of build.materials or of the catalog; default the build's material",
).optional();

/** Tapered studs of joints, as typed. */
export const studsField = list(
  "tapered studs of ball joints and tie rod ends; default none",
  block("a tapered stud, held at the taper's large end", {
    joint,
    diameter: lengthField("diameter of the taper at its large end", "positive"),
    reach: lengthField("from the ball's center to the taper's large end, along the stud", "positive"),
    material,
  }),
  { most: MAX_MEMBERS },
);

/** Rod ends, as typed. */
export const rodEndsField = list(
  "rod ends by the thread of their shank; default none",
  block("a rod end", {
    joint,
    thread: textField("thread of its shank, such as 5/8-18 or M16x1.5"),
    reach: lengthField("from the ball's center to where the shank is held, such as its jam nut", "positive"),
    lean: angleField(
      "how far the shank stands off the line of its load, degrees; default 0: it is pulled and pushed only",
      { above: -90, below: 90 },
    ).optional(),
    material,
  }),
  { most: MAX_MEMBERS },
);

/** Studs in mm. */
export function resolveStuds(typed: z.infer<typeof studsField>, reading: BlockReading): readonly StudSetup[] {
  return typed.map(({ joint, diameter, reach, material = null }, i) => ({
    joint,
    diameter: reading.length(diameter, i, "diameter"),
    reach: reading.length(reach, i, "reach"),
    material,
  }));
}

/** Rod ends in mm and radians. Refuses text that is no thread. */
export function resolveRodEnds(
  typed: z.infer<typeof rodEndsField>,
  reading: BlockReading,
): readonly RodEndSetup[] {
  return typed.flatMap(({ joint, thread, reach, lean, material = null }, i) => {
    const read = parseThread(thread);
    if (!read.ok) {
      reading.issue([i, "thread"], thread, read.mend);
      return [];
    }
    return {
      joint,
      thread: read.thread,
      reach: reading.length(reach, i, "reach"),
      lean: lean === undefined ? 0 : reading.angle(lean),
      material,
    };
  });
}
