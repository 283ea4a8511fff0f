import * as z from "zod";
import { block, list } from "../fields/blockFields.ts";
import { lengthField, numbersField, pointField, textField, tupleMend } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { firstCrossing } from "../reading/firstCrossing.ts";
import { MAX_MEMBERS, SAME_POINT } from "../reading/limits.ts";
import { difference, dot, scaled, unitOf } from "../reading/pointMath.ts";
import type { PlateSetup } from "../types/buildTypes.ts";
import type { Point } from "../types/truckTypes.ts";
import type { KnuckleSetup } from "../types/types.ts";
import { carriedBy, onField } from "./buildPlaces.ts";

const inPlate = (description: string) =>
  z
    .tuple([lengthField("u, along across"), lengthField("v, along up")], {
      error: tupleMend(description, "two lengths in the plate, [u, v]"),
    })
    .meta({ description });

/** Plates, as typed. */
export const platesField = list(
  "flat plates: brackets, gussets, steering arms; default none",
  block("a flat plate", {
    name: textField("name of the plate, unique among plates"),
    thickness: lengthField("thickness", "positive"),
    material: textField(
      "name of its material, of build.materials or of the catalog; default the build's material",
    ).optional(),
    at: pointField("where the plate's own axes start: a point of its middle plane, knuckle frame"),
    on: onField,
    across: numbersField(
      "direction of u in the knuckle frame, any length",
      "a direction of three numbers, [x, y, z]",
    ),
    up: numbersField(
      "direction the plate's v leans to in the knuckle frame, any length; v itself is square to u",
      "a direction of three numbers, [x, y, z]",
    ),
    outline: list(
      "corners of the plate in order, at least 3, straight between them",
      inPlate("a corner, [u, v]"),
      {
        least: 3,
      },
    ),
    holes: list(
      "round holes; default none",
      block("a round hole", {
        at: inPlate("its middle, [u, v]"),
        diameter: lengthField("diameter", "positive"),
      }),
    ).optional(),
  }),
  { most: MAX_MEMBERS },
);

type PlateAsTyped = z.infer<typeof platesField>[number];

/**
 * Plates in mm, directions square to one another. Refuses outlines that cross themselves and holes that leave them.
 * @param knuckle null = it is wrong already
 */
export function resolvePlates(
  typed: readonly PlateAsTyped[],
  reading: BlockReading,
  knuckle: KnuckleSetup | null,
): readonly PlateSetup[] {
  return typed.map((plate, i) => resolvePlate(plate, reading.inside(i), knuckle));
}

function resolvePlate(typed: PlateAsTyped, reading: BlockReading, knuckle: KnuckleSetup | null): PlateSetup {
  const carried = carriedBy(typed.on, knuckle);
  const across = direction(typed.across, "across", reading);
  const leaning = direction(typed.up, "up", reading);
  const up = unitOf(difference(leaning, scaled(across, dot(leaning, across))));
  // Two directions nearer than this (0.06 degrees) to one line fix no plane.
  const isPlane = up !== null && Math.abs(dot(leaning, across)) < 1 - 5e-7;
  if (!isPlane)
    reading.issue(["up"], typed.up, "must not point along across; write a direction that leans off it");
  const outline = typed.outline.map(
    ([u, v], i) => [reading.length(u, "outline", i, 0), reading.length(v, "outline", i, 1)] as const,
  );
  const holes = (typed.holes ?? []).map(({ at, diameter }, i) => ({
    at: [reading.length(at[0], "holes", i, "at", 0), reading.length(at[1], "holes", i, "at", 1)] as const,
    diameter: reading.length(diameter, "holes", i, "diameter"),
  }));
  if (checkOutline(outline, typed.outline, reading))
    holes.forEach((hole, i) => {
      if (!isInside(hole.at, outline))
        reading.issue(["holes", i, "at"], typed.holes![i]!.at, "must lie inside the plate's outline");
    });
  return {
    name: typed.name,
    thickness: reading.length(typed.thickness, "thickness"),
    material: typed.material ?? null,
    at: carried.place(reading.point(typed.at, "at")),
    across: carried.direction(across),
    up: carried.direction(isPlane ? up : [0, 0, 1]),
    outline,
    holes,
  };
}

function direction(typed: Point, key: string, reading: BlockReading): Point {
  const unit = unitOf(typed);
  if (unit === null) reading.issue([key], typed, "has no direction; write such as [1, 0, 0]");
  return unit ?? [1, 0, 0];
}

type Corner = readonly [u: number, v: number];

function checkOutline(outline: readonly Corner[], typed: unknown, reading: BlockReading): boolean {
  if (outline.length < 3) {
    reading.issue(["outline"], typed, "must have at least 3 corners");
    return false;
  }
  const same = outline.findIndex(([u, v], i) => {
    const next = outline[(i + 1) % outline.length]!;
    return Math.abs(next[0] - u) < SAME_POINT && Math.abs(next[1] - v) < SAME_POINT;
  });
  if (same >= 0) {
    reading.issue(["outline", same], outline[same], "is the same corner as the next; leave one of them out");
    return false;
  }
  const crossing = firstCrossing(outline);
  if (crossing === null) return true;
  reading.issue(
    ["outline"],
    typed,
    `must not cross itself: the edges from corners ${crossing[0]} and ${crossing[1]} meet`,
  );
  return false;
}

/** Even-odd rule along +u. */
function isInside([u, v]: Corner, outline: readonly Corner[]): boolean {
  let inside = false;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    if (a[1] > v !== b[1] > v && u < a[0] + ((v - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) inside = !inside;
  });
  return inside;
}
