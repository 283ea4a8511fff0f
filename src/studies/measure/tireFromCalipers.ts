import { DEFAULT_TREAD_SHARE, tireProfile } from "../../gaps/tire/tireProfile.ts";

/** A tire by calipers, mm. */
export interface CaliperTire {
  /** Overall, at the crown. */
  readonly diameter: number;
  readonly sectionWidth: number;
  /** null = a usual share of the section. */
  readonly treadWidth: number | null;
  /** How far the edge of the tread lies below the crown, straightedge over it. */
  readonly shoulderDrop: number;
}

/** Rows [x, r] from the inboard to the outboard bead, or what does not go together (key, sentence without a full stop). */
export type CaliperTireProfile =
  | { readonly ok: true; readonly profile: readonly (readonly [x: number, r: number])[] }
  | { readonly ok: false; readonly key: string; readonly mend: string };

/** Points of the crown to either side of its middle. */
const CROWN = 6;

/**
 * A tire's outer profile from four calipers: sidewalls and shoulders as those of a tire whose tread is flat at the height of
 * its edges, and on it a crown that rises as a parabola to the overall diameter. Its corners lie outside that curve by
 * a 144th of the drop, so that rubber is never left out.
 */
export function tireFromCalipers(
  { diameter, sectionWidth, treadWidth, shoulderDrop }: CaliperTire,
  rim: { readonly rimDiameter: number; readonly rimWidth: number },
): CaliperTireProfile {
  if (!(shoulderDrop >= 0)) return { ok: false, key: "tire.shoulderDrop", mend: "must be 0 or more" };
  const flat = diameter - 2 * shoulderDrop;
  if (flat <= rim.rimDiameter)
    return {
      ok: false,
      key: "tire.shoulderDrop",
      mend: "leaves no sidewall between the tread's edge and the rim; check it and the diameter",
    };
  const made = tireProfile({ diameter: flat, sectionWidth, treadWidth, ...rim });
  if (!made.ok) return made;
  const rows = Array.from(
    { length: made.profile.length / 2 },
    (_, i) => [made.profile[2 * i]!, made.profile[2 * i + 1]!] as const,
  );
  if (shoulderDrop === 0) return { ok: true, profile: rows };
  const half = rows.length / 2;
  const radius = diameter / 2;
  const edge = (treadWidth ?? DEFAULT_TREAD_SHARE * sectionWidth) / 2;
  const low = radius - shoulderDrop;
  // Tangents to the parabola meet at its height halfway between where they touch, one share squared above it.
  const crown = Array.from({ length: 2 * CROWN }, (_, i) => {
    const share = (i + 0.5) / CROWN - 1;
    return [share * edge, radius - shoulderDrop * (share * share - 0.25 / CROWN ** 2)] as const;
  });
  return {
    ok: true,
    profile: [...rows.slice(0, half), [-edge, low], ...crown, [edge, low], ...rows.slice(half)],
  };
}
