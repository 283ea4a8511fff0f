import * as z from "zod";
import { list } from "../fields/blockFields.ts";
import { lengthField, tupleMend } from "../fields/fields.ts";
import type { BlockReading, LengthAsTyped } from "../reading/blockReading.ts";
import { firstCrossing } from "../reading/firstCrossing.ts";
import { MAX_PROFILE_POINTS, SAME_POINT } from "../reading/limits.ts";
import type { ProfilePoint, WheelSetup } from "../types/types.ts";

/** A measured tire profile, as typed. */
export const profileField = list(
  "measured outer profile from the inboard bead to the outboard bead, at least 3 points, straight between them",
  z
    .tuple(
      [
        lengthField("x from the wheel's center plane, + outboard"),
        lengthField("r from the wheel's axis", "positive"),
      ],
      { error: tupleMend("a profile point", "a profile point of two lengths, [x, r]") },
    )
    .meta({ description: "one profile point, [x, r]" }),
  { least: 3, most: MAX_PROFILE_POINTS },
);

/**
 * The profile in mm, repeated points dropped. With the barrel it must make one closed outline that does not
 * cross or touch itself: down from the last point to the barrel, across, and up to the first. `wheel` null = the
 * wheel is wrong already, so only the profile alone is looked at.
 */
export function resolveProfile(
  typed: readonly (readonly [LengthAsTyped, LengthAsTyped])[],
  reading: BlockReading,
  wheel: WheelSetup | null,
): readonly ProfilePoint[] {
  const points: ProfilePoint[] = [];
  const typedAt: number[] = [];
  typed.forEach(([x, r], i) => {
    const point = [reading.length(x, i, 0), reading.length(r, i, 1)] as const;
    const before = points.at(-1);
    if (before && Math.abs(before[0] - point[0]) < SAME_POINT && Math.abs(before[1] - point[1]) < SAME_POINT)
      return;
    points.push(point);
    typedAt.push(i);
  });
  if (points.length < 3) {
    reading.issue([], typed, "must have at least 3 different points");
    return points;
  }
  const first = points[0]!;
  const last = points.at(-1)!;
  if (!(first[0] < last[0])) {
    reading.issue([], typed, "must run from the inboard bead (least x) to the outboard bead (greatest x)");
    return points;
  }
  if (wheel) checkOutline(points, typed, typedAt, reading, wheel);
  return points;
}

function checkOutline(
  points: readonly ProfilePoint[],
  typed: readonly (readonly [LengthAsTyped, LengthAsTyped])[],
  typedAt: readonly number[],
  reading: BlockReading,
  wheel: WheelSetup,
): void {
  const barrelRadius = wheel.barrelDiameter / 2;
  const low = points.findIndex((point) => point[1] < barrelRadius - SAME_POINT);
  if (low >= 0) {
    const at = typedAt[low]!;
    reading.issue(
      [at, 1],
      typed[at]![1],
      "is inside the rim's barrel; must be at least half of wheel.barrelDiameter",
    );
    return;
  }
  if (!points.some((point) => point[1] > wheel.rimDiameter / 2)) {
    reading.issue(
      [],
      typed,
      "lies inside the rim; its largest r must be more than half of wheel.rimDiameter",
    );
    return;
  }
  // Corners at the barrel, unless the profile starts or ends there already.
  const outline: ProfilePoint[] = [...points];
  if (points.at(-1)![1] > barrelRadius + SAME_POINT) outline.push([points.at(-1)![0], barrelRadius]);
  if (points[0]![1] > barrelRadius + SAME_POINT) outline.push([points[0]![0], barrelRadius]);
  const crossing = firstCrossing(outline);
  if (!crossing) return;
  const [at = 0, other] = crossing.map((edge) => typedAt[edge]);
  const otherLine =
    other === undefined || other === typedAt.at(-1)
      ? "the line down to the barrel"
      : `the line after point ${other}`;
  const mend = `the line after this point crosses or touches ${otherLine}; put the points in order round the tire`;
  reading.issue([at], typed[at], mend);
}
