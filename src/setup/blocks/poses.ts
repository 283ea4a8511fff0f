import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { lengthField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_STANCES } from "../reading/limits.ts";
import type { PoseSetup } from "../types/floorTypes.ts";
import { refuseRepeatedNames } from "./variants.ts";

const STEER_MEND = "must be a number from -1 to 1";

/** Named poses, as typed. */
export const posesField = list(
  "poses with a name, each wheel at its own travel, such as one on a bump; default none",
  block("a pose with a name", {
    name: textField("name of the pose, unique among the poses"),
    leftTravel: lengthField("the left wheel's travel, + = bump"),
    rightTravel: lengthField("the right wheel's travel, + = bump"),
    steer: z
      .number({ error: STEER_MEND })
      .min(-1, { error: STEER_MEND })
      .max(1, { error: STEER_MEND })
      .meta({ description: "share of full lock, -1 full right to 1 full left; default 0" })
      .optional(),
  }),
  { most: MAX_STANCES },
);

export type PosesAsTyped = z.infer<typeof posesField>;

/** The poses in mm. */
export function resolvePoses(typed: PosesAsTyped, reading: BlockReading): readonly PoseSetup[] {
  refuseRepeatedNames(typed, reading);
  return typed.flatMap(({ name, leftTravel, rightTravel, steer = 0 }, i) =>
    reading.isSound(i)
      ? [
          {
            name,
            travels: {
              left: reading.length(leftTravel, i, "leftTravel"),
              right: reading.length(rightTravel, i, "rightTravel"),
            },
            steer,
          },
        ]
      : [],
  );
}
