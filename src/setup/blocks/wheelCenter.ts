import * as z from "zod";
import { list } from "../fields/blockFields.ts";
import { lengthField, tupleMend } from "../fields/fields.ts";
import type { BlockReading, LengthAsTyped } from "../reading/blockReading.ts";
import { MAX_PROFILE_POINTS, SAME_POINT } from "../reading/limits.ts";
import type { ProfilePoint } from "../types/types.ts";

/** Inner surface of the wheel's center, as typed. */
export const wheelCenterField = list(
  "inner surface of the wheel's center that a caliper must clear, points [x, r] from the hub outward; default a flat disk at the mounting face out to the barrel",
  z
    .tuple(
      [
        lengthField("x from the mounting face, + outboard"),
        lengthField("r from the wheel's axis", "notNegative"),
      ],
      { error: tupleMend("a profile point", "a profile point of two lengths, [x, r]") },
    )
    .meta({ description: "one point of the surface, [x, r]" }),
  { least: 2, most: MAX_PROFILE_POINTS },
);

/**
 * The surface in mm. r never falls, and at one r it goes one way only, so that it cannot cross itself.
 * A point that repeats the one before is dropped.
 */
export function resolveWheelCenter(
  typed: readonly (readonly [LengthAsTyped, LengthAsTyped])[],
  reading: BlockReading,
): readonly ProfilePoint[] {
  const points: ProfilePoint[] = [];
  typed.forEach(([x, r], i) => {
    const point = [reading.length(x, i, 0), reading.length(r, i, 1)] as const;
    const last = points.at(-1);
    if (last && Math.abs(last[0] - point[0]) < SAME_POINT && Math.abs(last[1] - point[1]) < SAME_POINT)
      return;
    if (last && point[1] < last[1]) {
      reading.issue([i, 1], r, "is less than the r before it; put the points in order from the hub outward");
    }
    if (last && points.length > 1 && points.at(-2)![1] === last[1] && last[1] === point[1]) {
      reading.issue([i, 1], r, "is the third point at this r; give the first and the last of them");
    }
    points.push(point);
  });
  const outermost = points.at(-1);
  if (points.length < 2 || !(outermost![1] > 0)) {
    reading.issue([], typed, "must have at least 2 different points, and r must grow from the hub outward");
  }
  return points;
}
