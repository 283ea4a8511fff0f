/**
 * Every small number of the gaps room: name, unit, reason. What they promise together: a gap at one pose is exact to
 * `GAP_TOLERANCE` outside the ring, and to `SOLID_TOLERANCE` + `DEPTH_SHARE` × depth inside.
 */

/** mm. A gap at one pose is searched to this; far below what the section polygon or any tape can tell. */
export const GAP_TOLERANCE = 1e-6;

/**
 * Share of the depth. Deep inside the ring the deepest place is a flat ridge between tread and barrel and
 * many points are nearly as deep; a hundredth of a percent of the depth ends the search early there.
 */
export const DEPTH_SHARE = 1e-4;

/** mm. The deepest place inside a solid box that its faces do not show is searched to this only. */
export const SOLID_TOLERANCE = 5e-3;

/** mm. The true gap at a pose is no further below one found. */
export function gapSlack(gap: number): number {
  return gap < 0 ? SOLID_TOLERANCE - DEPTH_SHARE * gap : GAP_TOLERANCE;
}
