import type * as z from "zod";
import { mmFromInches } from "../../units/lengthUnits.ts";
import { offsetFromBackspacing } from "../../units/wheelOffset.ts";
import { block } from "../fields/blockFields.ts";
import { lengthField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { RIM_DIAMETER_RANGE } from "../reading/limits.ts";
import { defaultBarrelDiameter } from "../types/defaults.ts";
import type { WheelSetup } from "../types/types.ts";
import { resolveWheelCenter, wheelCenterField } from "./wheelCenter.ts";

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
  const barrelDiameter = reading.lengthOr(
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
