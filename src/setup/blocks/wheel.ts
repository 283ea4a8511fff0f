import * as z from "zod";
import { mmFromInches } from "../../units/lengthUnits.ts";
import { offsetFromBackspacing } from "../../units/wheelOffset.ts";
import { block, list } from "../fields/blockFields.ts";
import { lengthField, tupleMend } from "../fields/fields.ts";
import type { BlockReading, LengthAsTyped } from "../reading/blockReading.ts";
import { MAX_PROFILE_POINTS, RIM_DIAMETER_RANGE, SAME_POINT } from "../reading/limits.ts";
import { defaultBarrelDiameter } from "../types/defaults.ts";
import type { ProfilePoint, WheelSetup } from "../types/types.ts";

/** Inner surface of the wheel's center, as typed. */
const wheelCenterField = list(
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
function resolveWheelCenter(
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

/** The wheel, as typed. */
export const wheelField = block(
  "the wheel; exactly one of backspacing and offset",
  {
    rimDiameter: lengthField("nominal rim diameter, at the bead seat", "positive"),
    rimWidth: lengthField("nominal rim width, between the flanges where the beads sit", "positive"),
    backspacing: lengthField(
      "mounting face to inboard rim edge (overall width is rimWidth + 1 in)",
      "notNegative",
    ).optional(),
    offset: lengthField("mounting face to the wheel's center plane, + = face outboard of it").optional(),
    barrelDiameter: lengthField(
      "diameter of the rim's barrel, inside which there is room; default rimDiameter less 1 1/4 in",
      "positive",
    ).optional(),
    center: wheelCenterField.optional(),
  },
  { oneOf: [{ required: ["backspacing"] }, { required: ["offset"] }] },
);

export type WheelAsTyped = z.infer<typeof wheelField>;

/** The wheel in mm, backspacing turned into offset. */
export function resolveWheel(typed: WheelAsTyped, reading: BlockReading): WheelSetup {
  const rimDiameter = reading.length(typed.rimDiameter, "rimDiameter");
  const rimWidth = reading.length(typed.rimWidth, "rimWidth");
  const { least, most } = RIM_DIAMETER_RANGE;
  if (rimDiameter < least || rimDiameter > most) {
    reading.issue(["rimDiameter"], typed.rimDiameter, rimDiameterMend(typed.rimDiameter, reading.units));
  }
  const barrelDiameter = reading.sizeOr(
    defaultBarrelDiameter(rimDiameter),
    typed.barrelDiameter,
    "barrelDiameter",
  );
  if (barrelDiameter >= rimDiameter) {
    reading.issue(["barrelDiameter"], typed.barrelDiameter, "must be less than rimDiameter");
  }
  const center = typed.center ? resolveWheelCenter(typed.center, reading.inside("center")) : null;
  const offset = resolveOffset(typed, rimWidth, reading);
  return { rimDiameter, rimWidth, offset, barrelDiameter, center };
}

function resolveOffset(typed: WheelAsTyped, rimWidth: number, reading: BlockReading): number {
  const { backspacing, offset } = typed;
  if (backspacing !== undefined && offset !== undefined) {
    reading.issue(
      ["offset"],
      offset,
      "give backspacing or offset, not both (in a variant, set the other to null)",
    );
  }
  if (offset !== undefined) return reading.length(offset, "offset");
  if (backspacing !== undefined) {
    return offsetFromBackspacing(reading.length(backspacing, "backspacing"), rimWidth);
  }
  reading.issue(["backspacing"], undefined, "required: give backspacing or offset");
  return 0;
}

/** Names the unit that makes a bare number a rim, when there is one. */
function rimDiameterMend(typed: number | string, units: "in" | "mm"): string {
  const { least, most } = RIM_DIAMETER_RANGE;
  const mend = "must be between 6 and 60 in";
  if (typeof typed !== "number") return mend;
  const otherUnits = units === "in" ? "mm" : "in";
  const mm = otherUnits === "in" ? mmFromInches(typed) : typed;
  return mm >= least && mm <= most ? `${mend}; did you mean "${typed} ${otherUnits}"?` : mend;
}
