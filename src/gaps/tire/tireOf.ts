import { describeTireSizeForms, parseTireSize } from "../../units/tireSize.ts";
import { RIM_FLANGE_WIDTH } from "../../units/wheelOffset.ts";
import { lengthInBoth, type TireIssue, tireDesignDimensions } from "./designDimensions.ts";
import { type MeasuredPoint, measuredProfileIssue } from "./measuredProfile.ts";
import { RIM_FLANGE_HEIGHT } from "./tireOutline.ts";
import { tireProfile } from "./tireProfile.ts";

/**
 * Loaded over free radius where nobody measured it. Radial tires at their rated load and pressure stand at
 * about 0.91 (tall sidewalls) to 0.96 (low ones) of the free radius: common practice, no source. 0.95 is for
 * a lowered truck, whose front tires are rarely at rated load. Worth measuring: it is floor to wheel center.
 */
const LOADED_SHARE = 0.95;

/** Default wheel center to floor, mm, for a tire of this free (unloaded) radius; good to about ±3 %. */
export function defaultLoadedRadius(freeRadius: number): number {
  return LOADED_SHARE * freeRadius;
}

/** A tire as a setup gives it, mm; `loadedRadius` and `treadWidth` null = default. */
export type TireInput = { readonly loadedRadius: number | null } & (
  | { readonly kind: "size"; readonly size: string }
  | {
      readonly kind: "dimensions";
      readonly diameter: number;
      readonly sectionWidth: number;
      readonly treadWidth: number | null;
    }
  | { readonly kind: "profile"; readonly profile: readonly MeasuredPoint[] }
);

/** What the ring needs of a wheel, mm. */
export interface WheelInput {
  readonly rimDiameter: number;
  readonly rimWidth: number;
  readonly barrelDiameter: number;
}

/** Tire and rim as one solid of revolution about the wheel axis, mm. */
export interface TireRing {
  readonly ok: true;
  /** Rows [x, r] from the inboard bead to the outboard bead; x from the wheel's center plane, + outboard. */
  readonly profile: Float64Array;
  /** The profile is closed down to this radius at its two ends. */
  readonly barrelRadius: number;
  /** Wheel center to contact patch. */
  readonly loadedRadius: number;
  /** Largest r. */
  readonly freeRadius: number;
  /** The tire's, on this rim; for a measured profile its largest x less its smallest. */
  readonly sectionWidth: number;
  /** Things to check that do not stop the work. */
  readonly cautions: readonly TireIssue[];
}

export type TireRingResult = TireRing | ({ readonly ok: false } & TireIssue);

/** A rim code and a rim diameter that differ by more are of different wheels; 16 and 16.5 must not pass; a quarter inch itself does, rounding included. */
const RIM_MISMATCH = 0.25 * 25.4 + 1e-6;

/** Rim widths the tables allow lie within this of the measuring rim (common practice; books differ). */
const USUAL_RIM_SPREAD = 1.5 * 25.4 + 1e-6;

const fail = (key: string, mend: string): { ok: false } & TireIssue => ({ ok: false, key, mend });

type Section =
  | { ok: true; profile: Float64Array; sectionWidth: number; cautions: TireIssue[] }
  | ({ readonly ok: false } & TireIssue);

function dimensionedSection(
  tire: { diameter: number; sectionWidth: number; treadWidth: number | null },
  wheel: WheelInput,
): Section {
  const { rimDiameter, rimWidth } = wheel;
  const flange = { width: RIM_FLANGE_WIDTH, height: RIM_FLANGE_HEIGHT };
  const { diameter, sectionWidth, treadWidth } = tire;
  const made = tireProfile({ diameter, sectionWidth, treadWidth, rimDiameter, rimWidth, flange });
  if (!made.ok) return made;
  const cautions: TireIssue[] = [];
  if (rimWidth >= sectionWidth) {
    const section = lengthInBoth(sectionWidth);
    cautions.push({
      key: "wheel.rimWidth",
      mend: `the rim is as wide as the tire, ${section}, or wider; check both widths`,
    });
  }
  return { ok: true, profile: made.profile, sectionWidth, cautions };
}

function sizedSection(text: string, wheel: WheelInput): Section {
  const size = parseTireSize(text);
  if (!size) return fail("tire.size", describeTireSizeForms);
  if (!(Math.abs(size.rimCode * 25.4 - wheel.rimDiameter) <= RIM_MISMATCH)) {
    const wheelInches = Number((wheel.rimDiameter / 25.4).toFixed(2));
    return fail(
      "tire.size",
      `the tire is made for a ${size.rimCode} in rim and wheel.rimDiameter is ${wheelInches} in; change one of them`,
    );
  }
  const design = tireDesignDimensions(size, wheel.rimWidth);
  const section = dimensionedSection({ ...design, treadWidth: null }, wheel);
  if (!section.ok) return section.key.startsWith("tire.") ? fail("tire.size", section.mend) : section;
  if (Math.abs(wheel.rimWidth - design.measuringRimWidth) > USUAL_RIM_SPREAD) {
    const measuring = lengthInBoth(design.measuringRimWidth);
    section.cautions.push({
      key: "wheel.rimWidth",
      mend: `tires of this size are measured on a rim of ${measuring}; ask the tire's maker whether this rim is allowed`,
    });
  }
  return section;
}

function measuredSection(profile: readonly MeasuredPoint[], barrelRadius: number): Section {
  const issue = measuredProfileIssue(profile, barrelRadius);
  if (issue) return { ok: false, ...issue };
  let low = Infinity;
  let high = -Infinity;
  for (const [x] of profile) {
    low = Math.min(low, x);
    high = Math.max(high, x);
  }
  return { ok: true, profile: Float64Array.from(profile.flat()), sectionWidth: high - low, cautions: [] };
}

function wheelIssue(wheel: WheelInput): TireIssue | null {
  for (const key of ["rimDiameter", "rimWidth", "barrelDiameter"] as const) {
    const length = wheel[key];
    if (!(length > 0 && Number.isFinite(length))) {
      return { key: `wheel.${key}`, mend: "must be a length greater than 0" };
    }
  }
  if (wheel.barrelDiameter > wheel.rimDiameter) {
    const rim = lengthInBoth(wheel.rimDiameter);
    return {
      key: "wheel.barrelDiameter",
      mend: `the inside of the barrel cannot be larger than the rim, ${rim}`,
    };
  }
  return null;
}

/**
 * The ring of a tire on a wheel: from a size in standard notation, from main dimensions, or a measured
 * profile as it is. Made profiles include the rim flanges, half an inch a side, so the ring is at least
 * the wheel's overall width; a measured profile must hold them itself. Never throws for what a user wrote:
 * `ok: false` names the key and the mend.
 */
export function tireRing(tire: TireInput, wheel: WheelInput): TireRingResult {
  const wrongWheel = wheelIssue(wheel);
  if (wrongWheel) return { ok: false, ...wrongWheel };
  const barrelRadius = wheel.barrelDiameter / 2;
  const section =
    tire.kind === "size"
      ? sizedSection(tire.size, wheel)
      : tire.kind === "dimensions"
        ? dimensionedSection(tire, wheel)
        : measuredSection(tire.profile, barrelRadius);
  if (!section.ok) return section;

  const { profile, sectionWidth, cautions } = section;
  let freeRadius = 0;
  for (let i = 1; i < profile.length; i += 2) freeRadius = Math.max(freeRadius, profile[i]!);
  const loadedRadius = tire.loadedRadius ?? defaultLoadedRadius(freeRadius);
  if (!(loadedRadius > barrelRadius && loadedRadius <= freeRadius)) {
    const barrel = lengthInBoth(barrelRadius);
    const free = lengthInBoth(freeRadius);
    return fail(
      "tire.loadedRadius",
      `wheel center to floor must be over the barrel radius, ${barrel}, and at most the free radius, ${free}`,
    );
  }
  return { ok: true, profile, barrelRadius, loadedRadius, freeRadius, sectionWidth, cautions };
}
