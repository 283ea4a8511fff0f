import { addScaled, dot, length, sub, type Vec3 } from "../../geometry/vec.ts";

/** mm. Slack for a point that lies on the bead itself. */
const ON_BEAD = 0.5;

/**
 * Which part of the ring a point on it belongs to: the tire, or the wheel inside its beads.
 * @param axis unit wheel axis; @param profile [x0, r0, x1, r1 …] bead to bead, mm
 */
export function ringSurface(
  point: Vec3,
  center: Vec3,
  axis: Vec3,
  profile: ArrayLike<number>,
): "tire" | "wheel" {
  const fromCenter = sub(point, center);
  const radius = length(addScaled(fromCenter, axis, -dot(fromCenter, axis)));
  const bead = Math.max(profile[1] ?? 0, profile[profile.length - 1] ?? 0);
  return radius <= bead + ON_BEAD ? "wheel" : "tire";
}
