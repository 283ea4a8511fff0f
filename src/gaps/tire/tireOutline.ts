/** Corners per quarter: the shoulder meets the fender, so it is the finer one. 30 points in all. */
const SHOULDER_CORNERS = 8;
const SIDEWALL_CORNERS = 6;

type Corner = readonly [x: number, r: number];

export interface OutlineDimensions {
  readonly diameter: number;
  readonly sectionWidth: number;
  readonly treadWidth: number;
  readonly rimDiameter: number;
  readonly rimWidth: number;
  readonly flange?: { readonly width: number; readonly height: number };
}

/** Drops every corner that lies in the others' hull; corners come sorted by r, then x, on the outboard side. */
function outboardHull(corners: readonly Corner[]): Corner[] {
  const hull: Corner[] = [];
  for (const corner of corners) {
    while (hull.length >= 2) {
      const [x0, r0] = hull[hull.length - 2]!;
      const [x1, r1] = hull[hull.length - 1]!;
      if ((x1 - x0) * (corner[1] - r1) - (r1 - r0) * (corner[0] - x1) > 0) break;
      hull.pop();
    }
    hull.push(corner);
  }
  return hull;
}

/**
 * Outboard half of a tire's outline, from the bead to the tread edge, as corners outside the smooth curve.
 * The curve, our own choice from the common look of a tire section (no source):
 * - a quarter ellipse from the bead, which it leaves square to the rim as rubber leaves a flange, out to the
 *   section width at half the section height;
 * - a quarter ellipse from there to the edge of the tread: the shoulder, tighter the wider the tread;
 * - a flat tread at half the diameter. A crown would take rubber away.
 * A `flange` is a block outside the bead, the room under its curl counted as filled; the outline is then
 * the hull of tire and block. A block taller than half the section is cut there.
 * Dimensions must be positive, diameter over rim diameter, tread not over section.
 */
export function tireOutline(dimensions: OutlineDimensions): Corner[] {
  const beadX = dimensions.rimWidth / 2;
  const beadR = dimensions.rimDiameter / 2;
  const treadX = dimensions.treadWidth / 2;
  const treadR = dimensions.diameter / 2;
  const widestX = Math.max(dimensions.sectionWidth / 2, beadX);
  const widestR = (beadR + treadR) / 2;
  // u = 1 and v = 1 mean the widest place and the tread exactly, which from + 1 × (to − from) might miss.
  const between = (from: number, to: number, share: number): number =>
    share === 1 ? to : from + share * (to - from);

  const corners: Corner[] = [[beadX, beadR]];
  if (widestX > beadX) {
    const sidewall = quarterTangentCorners(widestX - beadX, widestR - beadR, SIDEWALL_CORNERS);
    for (const [u, v] of sidewall.reverse()) {
      corners.push([between(beadX, widestX, u), between(widestR, beadR, v)]);
    }
  }
  if (widestX > treadX) {
    for (const [u, v] of quarterTangentCorners(widestX - treadX, treadR - widestR, SHOULDER_CORNERS)) {
      corners.push([between(treadX, widestX, u), between(widestR, treadR, v)]);
    }
  } else {
    corners.push([widestX, treadR]);
  }

  if (!dimensions.flange) return corners;
  const flangeX = beadX + dimensions.flange.width;
  const flangeR = Math.min(beadR + dimensions.flange.height, widestR);
  const withFlange: Corner[] = [...corners, [flangeX, beadR], [flangeX, flangeR]];
  return outboardHull(withFlange.sort((a, b) => a[1] - b[1] || a[0] - b[0]));
}

/**
 * Corners of a polyline drawn about a quarter ellipse with half-axes `a` (along u) and `b` (along v), in
 * shares of them: from the tangent u = 1 to the tangent v = 1, every side touching the ellipse, no point
 * inside it. The first corner has u = 1 and the last has v = 1, exactly.
 *
 * The sides touch at cos t, sin t with tan t = (b/a)^¼ tan τ, τ in equal steps. A corner stands off by about
 * p·Δt²/8, p the distance from center to tangent, which runs from a to b; those steps make the two ends equal.
 */
function quarterTangentCorners(a: number, b: number, count: number): [u: number, v: number][] {
  // A quarter a thousand times longer than wide is a straight line; the cap keeps its steps apart.
  const stretch = Math.sqrt(Math.sqrt(Math.min(Math.max(b / a, 1e-3), 1e3)));
  const corners: [number, number][] = [];
  let cosHere = 1;
  let sinHere = 0;
  for (let i = 1; i <= count; i++) {
    const step = (i / count) * (Math.PI / 2);
    const along = Math.cos(step);
    const across = stretch * Math.sin(step);
    const length = Math.sqrt(along * along + across * across);
    const cosNext = i === count ? 0 : along / length;
    const sinNext = i === count ? 1 : across / length;
    // Where two tangents of the unit circle meet.
    const meet = 1 + cosHere * cosNext + sinHere * sinNext;
    corners.push([(cosHere + cosNext) / meet, (sinHere + sinNext) / meet]);
    cosHere = cosNext;
    sinHere = sinNext;
  }
  return corners;
}

/** Height of a J flange over the bead seat, mm: ISO 4000-2 / TRA, from memory, 17.3 to 17.5. */
export const RIM_FLANGE_HEIGHT = 17.5;

/** Wheel center to the rim flange's edge, mm: what a wheel stands on with its tire flat. @param rimDiameter nominal, mm */
export function rimFlangeRadius(rimDiameter: number): number {
  return 0.5 * rimDiameter + RIM_FLANGE_HEIGHT;
}
