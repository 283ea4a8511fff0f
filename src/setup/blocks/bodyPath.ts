import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { lengthField, pointField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { SAME_POINT } from "../reading/limits.ts";
import { difference, norm } from "../reading/pointMath.ts";
import type { PathPart, Point } from "../types/types.ts";
import { bodyPartFields, resolvePartNaming } from "./bodyPartNaming.ts";

/** A path, as typed. */
export const pathField = block("a line through points with a radius: a lip, a hose; one point is a ball", {
  ...bodyPartFields,
  kind: z.literal("path").meta({ description: "a line through points with a radius" }),
  radius: lengthField("radius of the line's round section; 0 is a thin line", "notNegative"),
  points: list("points the line runs through, straight between them", pointField("a point, vehicle axes"), {
    least: 1,
  }),
});

export type PathAsTyped = z.infer<typeof pathField>;

/** The path in mm; a point that repeats the one before is dropped. */
export function resolvePath(typed: PathAsTyped, reading: BlockReading): PathPart {
  const radius = reading.length(typed.radius, "radius");
  if (typed.points.length === 0) reading.issue(["points"], typed.points, "must have at least one point");
  const points: Point[] = [];
  typed.points.forEach((typedPoint, i) => {
    const point = reading.point(typedPoint, "points", i);
    const before = points.at(-1);
    if (!before || norm(difference(point, before)) >= SAME_POINT) points.push(point);
  });
  return { ...resolvePartNaming(typed), kind: "path", radius, points };
}
