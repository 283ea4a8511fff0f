import { lengthInBoth, type TireIssue } from "./designDimensions.ts";
import { tireOutline } from "./tireOutline.ts";

/** Main dimensions of a tire on its rim, mm. */
export interface TireProfileDimensions {
  /** Overall, inflated, unloaded. */
  readonly diameter: number;
  /** Widest, on this rim. */
  readonly sectionWidth: number;
  /** Left out or null = `DEFAULT_TREAD_SHARE` of the section width. */
  readonly treadWidth?: number | null;
  /** Nominal: the beads sit at half of it. */
  readonly rimDiameter: number;
  /** Between the flanges: the beads sit at half of it either side. */
  readonly rimWidth: number;
  /** Rim flange outside each bead: how far it stands out and how tall it is. Left out = the tire alone. */
  readonly flange?: { readonly width: number; readonly height: number };
}

export type TireProfileResult =
  | { readonly ok: true; readonly profile: Float64Array }
  | { readonly ok: false; readonly key: string; readonly mend: string };

/** Tread width over section width where nobody measured it: common practice, no source. */
export const DEFAULT_TREAD_SHARE = 0.78;

function problem(dimensions: TireProfileDimensions, treadWidth: number): TireIssue | null {
  const { diameter, sectionWidth, rimDiameter, rimWidth } = dimensions;
  const lengths = [
    ["wheel.rimDiameter", rimDiameter],
    ["wheel.rimWidth", rimWidth],
    ["tire.diameter", diameter],
    ["tire.sectionWidth", sectionWidth],
    ["tire.treadWidth", treadWidth],
  ] as const;
  for (const [key, length] of lengths) {
    if (!(length > 0 && Number.isFinite(length))) return { key, mend: "must be a length greater than 0" };
  }
  if (!(diameter > rimDiameter)) {
    const rim = lengthInBoth(rimDiameter);
    return {
      key: "tire.diameter",
      mend: `the tire must be larger than its rim, ${rim}; check both diameters`,
    };
  }
  if (treadWidth > sectionWidth) {
    const section = lengthInBoth(sectionWidth);
    return {
      key: "tire.treadWidth",
      mend: `the tread cannot be wider than the section, ${section}, which is the widest place of the tire`,
    };
  }
  return null;
}

/**
 * Outer profile of a tire from its main dimensions: flat rows [x, r] in mm, from the inboard bead to the
 * outboard bead; x from the center plane, + outboard, r from the wheel axis. Exactly symmetric.
 *
 * The outline turns one way only. max r is exactly `diameter`/2; max |x| is exactly `sectionWidth`/2, at half the
 * section height. A rim as wide as the tire or wider is the widest place itself: then the sidewall stands straight
 * up from the bead and max |x| is `rimWidth`/2 (with a `flange`, its outer face if that is wider still).
 *
 * The corners lie outside the smooth curve `tireOutline` describes, never inside, so a gap to this profile is
 * never more than the gap to that curve. It is less by under 0.25 mm at the shoulder of a half-ton's tire and
 * by under 0.7 mm anywhere on tires as sold, up to 900 mm.
 * A real shoulder and a crowned tread lie inside it; raised letters and rim protectors may stand out of it.
 */
export function tireProfile(dimensions: TireProfileDimensions): TireProfileResult {
  const treadWidth = dimensions.treadWidth ?? DEFAULT_TREAD_SHARE * dimensions.sectionWidth;
  const issue = problem(dimensions, treadWidth);
  if (issue) return { ok: false, ...issue };

  const outboard = tireOutline({ ...dimensions, treadWidth });
  const count = outboard.length;
  const profile = new Float64Array(4 * count);
  outboard.forEach(([x, r], i) => {
    profile[2 * i] = -x;
    profile[2 * i + 1] = r;
    const mirrored = 2 * (2 * count - 1 - i);
    profile[mirrored] = x;
    profile[mirrored + 1] = r;
  });
  return { ok: true, profile };
}
