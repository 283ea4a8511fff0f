import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { choiceField, lengthField, pointField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { SAME_POINT } from "../reading/limits.ts";
import { difference, norm } from "../reading/pointMath.ts";
import { DEFAULT_SIDE } from "../types/defaults.ts";
import type { BoxPart, PartSide, PathPart, Point } from "../types/truckTypes.ts";

/** What every body part has. */
export const bodyPartFields = {
  name: textField("name of the part, unique in the setup"),
  side: choiceField("which side of the truck has it; default both: as given and mirrored", [
    "both",
    "left",
    "right",
  ]).optional(),
};

/** Name and side of a body part. */
export function resolvePartNaming(typed: { readonly name: string; readonly side?: PartSide | undefined }): {
  readonly name: string;
  readonly side: PartSide;
} {
  return { name: typed.name, side: typed.side ?? DEFAULT_SIDE };
}

/** A box, as typed. */
export const boxField = block("a solid box with its edges along the vehicle axes", {
  ...bodyPartFields,
  kind: z.literal("box").meta({ description: "a solid box" }),
  min: pointField("corner with the least x, y and z, vehicle axes"),
  max: pointField("corner with the greatest x, y and z, vehicle axes"),
});

export type BoxAsTyped = z.infer<typeof boxField>;

/** The box in mm. Refuses one without thickness. */
export function resolveBox(typed: BoxAsTyped, reading: BlockReading): BoxPart {
  const min = reading.point(typed.min, "min");
  const max = reading.point(typed.max, "max");
  for (const axis of [0, 1, 2] as const) {
    if (min[axis] < max[axis]) continue;
    reading.issue(["max", axis], typed.max[axis], `must be more than min[${axis}]`);
  }
  return { ...resolvePartNaming(typed), kind: "box", min, max };
}

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
