import { LatheGeometry, Vector2 } from "three";

const SEGMENTS = 72;

/** A solid of revolution about y from an outline of [along the axis, radius] pairs, flat: x0, r0, x1, r1 … in mm. */
export function latheGeometry(outline: ArrayLike<number>): LatheGeometry {
  const points: Vector2[] = [];
  for (let i = 0; i + 1 < outline.length; i += 2) points.push(new Vector2(outline[i + 1]!, outline[i]!));
  return new LatheGeometry(points, SEGMENTS);
}

/** The rim from the tire's beads down to the barrel and across, as the ring is closed. */
export function rimOutline(profile: ArrayLike<number>, barrelRadius: number): number[] {
  const n = profile.length;
  const x0 = profile[0]!;
  const x1 = profile[n - 2]!;
  return [x0, profile[1]!, x0, barrelRadius, x1, barrelRadius, x1, profile[n - 1]!];
}

/** The wheel's disc from the mounting face out to the barrel. @param offset + = mounting face outboard of the center plane */
export function discOutline(profile: ArrayLike<number>, barrelRadius: number, offset: number): number[] {
  // A hair off the hub's own face, which lies in the same plane.
  const face = offset + 2;
  const inboard = profile[0]! + 25;
  const outboard = profile[profile.length - 2]! - 25;
  const rim = Math.min(Math.max(face + 18, inboard), outboard);
  return [face, 42, face, 96, face + 16, 0.68 * barrelRadius, rim, 0.82 * barrelRadius, rim, barrelRadius];
}
