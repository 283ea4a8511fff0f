import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { lengthField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { MAX_STANCES } from "../reading/limits.ts";
import type { PoseSetup } from "../types/floorTypes.ts";
import { valueAt } from "../types/keyPath.ts";
import { refuseRepeatedNames } from "./variants.ts";

const STEER_MEND = "must be a number from -1 to 1";

/** Named poses, as typed. */
export const posesField = list(
  "poses with a name, each wheel at its own travel, such as one on a bump; default none",
  block("a pose with a name", {
    name: textField("name of the pose, unique among poses and stances"),
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

/** A pose and a stance are asked for alike, by the name alone. */
const STANCE_NAME_MEND = "is the name of a stance already; a pose needs a name of its own";

/** Why no other pose of a document, as typed, can have a name, and how to mend that; null = it can. */
export function poseNameMend(name: string, document: unknown): string | null {
  if (namesIn(valueAt(document, ["poses"])).has(name))
    return "is the name of a pose already; each needs its own";
  return namesIn(valueAt(document, ["stances"])).has(name) ? STANCE_NAME_MEND : null;
}

/** What the entries of a list are called, whatever its shape. */
function namesIn(list: unknown): ReadonlySet<unknown> {
  return new Set((Array.isArray(list) ? list : []).map((entry) => valueAt(entry, ["name"])));
}

/** The poses in mm. @param stances as typed, whatever their shape: no pose may be called as one of them */
export function resolvePoses(
  typed: PosesAsTyped,
  stances: unknown,
  reading: BlockReading,
): readonly PoseSetup[] {
  refuseRepeatedNames(typed, reading);
  const taken = namesIn(stances);
  return typed.flatMap((pose, i) => {
    if (!reading.isSound(i)) return [];
    const { name, leftTravel, rightTravel, steer = 0 } = pose;
    if (taken.has(name)) reading.issue([i, "name"], name, STANCE_NAME_MEND);
    const left = reading.length(leftTravel, i, "leftTravel");
    const right = reading.length(rightTravel, i, "rightTravel");
    return [{ name, travels: { left, right }, steer }];
  });
}
