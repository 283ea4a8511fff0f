import type * as z from "zod";
import { block } from "../fields/blockFields.ts";
import { choiceField, lengthField, pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { DEFAULT_SHOCK_MOUNT } from "../types/defaults.ts";
import type { ShockLimit } from "../types/limitsTypes.ts";

/** The shock, as typed. */
export const shockLimitField = block("the shock by its mounts and its shortest and longest length", {
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
export function resolveShockLimit(typed: z.infer<typeof shockLimitField>, reading: BlockReading): ShockLimit {
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
