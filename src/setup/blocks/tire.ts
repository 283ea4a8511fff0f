import type * as z from "zod";
import { mmFromInches } from "../../units/lengthUnits.ts";
import { describeTireSizeForms, parseTireSize, type TireSize } from "../../units/tireSize.ts";
import { block } from "../fields/blockFields.ts";
import { lengthField, textField } from "../fields/fields.ts";
import type { BlockReading } from "../reading/blockReading.ts";
import { RIM_FIT } from "../reading/limits.ts";
import type { TireSetup, WheelSetup } from "../types/types.ts";
import { profileField, resolveProfile } from "./tireProfile.ts";

/** The tire, as typed. */
export const tireField = block(
  "the tire; exactly one of size, diameter with sectionWidth, and profile",
  {
    size: textField("size as on the sidewall: P235/70R15, LT245/75R16, 31x10.50R15LT").optional(),
    diameter: lengthField("overall diameter, not loaded", "positive").optional(),
    sectionWidth: lengthField("width from sidewall to sidewall on this rim", "positive").optional(),
    treadWidth: lengthField("width of the tread; default from the section width", "positive").optional(),
    profile: profileField.optional(),
    loadedRadius: lengthField(
      "wheel center to floor with the truck's weight on it; default from the free radius",
      "positive",
    ).optional(),
  },
  {
    oneOf: [{ required: ["size"] }, { required: ["diameter", "sectionWidth"] }, { required: ["profile"] }],
    dependentRequired: { sectionWidth: ["diameter"], treadWidth: ["diameter"] },
  },
);

export type TireAsTyped = z.infer<typeof tireField>;

const WAYS = "give one of size, diameter with sectionWidth, or profile";

/**
 * The tire in mm. Refuses a tire that does not go on the rim; `wheel` null = the wheel is wrong already, so
 * only the tire alone is looked at. Null = an issue was added and there is no tire.
 */
export function resolveTire(
  typed: TireAsTyped,
  reading: BlockReading,
  wheel: WheelSetup | null,
): TireSetup | null {
  const loadedRadius = reading.lengthOr(null, typed.loadedRadius, "loadedRadius");
  const given = (["size", "diameter", "profile"] as const).filter((key) => typed[key] !== undefined);
  if (given.length === 0) {
    reading.issue(["size"], undefined, `required: ${WAYS}`);
    return null;
  }
  if (given.length > 1) {
    reading.issue(
      [given[1]!],
      typed[given[1]!],
      `${WAYS}; ${given[0]} is here too (in a variant, set it to null)`,
    );
    return null;
  }
  for (const key of ["sectionWidth", "treadWidth"] as const) {
    if (typed[key] !== undefined && typed.diameter === undefined) {
      reading.issue([key], typed[key], `goes with diameter, not with ${given[0]}`);
    }
  }
  const found = resolveShape(typed, reading, wheel);
  if (!found) return null;
  if (loadedRadius !== null) checkLoadedRadius(typed, loadedRadius, found.freeRadius, reading, wheel);
  return { ...found.shape, loadedRadius };
}

type Shape =
  | { readonly kind: "size"; readonly size: string }
  | {
      readonly kind: "dimensions";
      readonly diameter: number;
      readonly sectionWidth: number;
      readonly treadWidth: number | null;
    }
  | { readonly kind: "profile"; readonly profile: readonly (readonly [x: number, r: number])[] };

interface FoundShape {
  readonly shape: Shape;
  /** mm; of a size, as nominal. */
  readonly freeRadius: number;
}

function resolveShape(
  typed: TireAsTyped,
  reading: BlockReading,
  wheel: WheelSetup | null,
): FoundShape | null {
  if (typed.size !== undefined) return resolveSize(typed.size, reading, wheel);
  if (typed.profile !== undefined) {
    const profile = resolveProfile(typed.profile, reading.inside("profile"), wheel);
    const freeRadius = profile.reduce((most, [, r]) => Math.max(most, r), 0);
    return reading.isSound("profile") ? { shape: { kind: "profile", profile }, freeRadius } : null;
  }
  const diameter = reading.length(typed.diameter!, "diameter");
  if (wheel && diameter <= wheel.rimDiameter) {
    reading.issue(["diameter"], typed.diameter, "must be more than wheel.rimDiameter");
  }
  if (typed.sectionWidth === undefined) {
    reading.issue(["sectionWidth"], undefined, "required: width from sidewall to sidewall on this rim");
    return null;
  }
  const sectionWidth = reading.length(typed.sectionWidth, "sectionWidth");
  const treadWidth = reading.lengthOr(null, typed.treadWidth, "treadWidth");
  if (treadWidth !== null && treadWidth > sectionWidth) {
    reading.issue(["treadWidth"], typed.treadWidth, "must not be more than sectionWidth");
  }
  return { shape: { kind: "dimensions", diameter, sectionWidth, treadWidth }, freeRadius: diameter / 2 };
}

function resolveSize(text: string, reading: BlockReading, wheel: WheelSetup | null): FoundShape | null {
  const size = parseTireSize(text);
  if (!size) {
    reading.issue(["size"], text, `not a tire size that is understood; ${describeTireSizeForms}`);
    return null;
  }
  if (wheel && Math.abs(mmFromInches(size.rimCode) - wheel.rimDiameter) > RIM_FIT) {
    reading.issue(["size"], text, `is made for a ${size.rimCode} in rim; fix this or wheel.rimDiameter`);
  }
  return { shape: { kind: "size", size: text }, freeRadius: nominalRadius(size) };
}

/** mm. */
function nominalRadius(size: TireSize): number {
  return size.kind === "metric"
    ? mmFromInches(size.rimCode) / 2 + (size.nominalWidthMm * size.aspectPercent) / 100
    : mmFromInches(size.nominalDiameterInches) / 2;
}

function checkLoadedRadius(
  typed: TireAsTyped,
  loadedRadius: number,
  freeRadius: number,
  reading: BlockReading,
  wheel: WheelSetup | null,
): void {
  if (loadedRadius > freeRadius) {
    reading.issue(["loadedRadius"], typed.loadedRadius, "must not be more than half the tire's diameter");
  } else if (wheel && loadedRadius <= wheel.rimDiameter / 2) {
    reading.issue(["loadedRadius"], typed.loadedRadius, "must be more than half of wheel.rimDiameter");
  }
}
