import { addScaled, cross, dot, length, normalize, sub, type Vec3 } from "../../geometry/vec.ts";
import type { Setup } from "../../setup/types/types.ts";
import type { FrontEnd, Side } from "../../suspension/frontEnd.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import type { ApartPose } from "../../suspension/solvePose.ts";
import type { FloorPlane } from "./floorPose.ts";

/** The floor under both front wheels, and where they stand on it; vehicle axes, mm. */
export interface WheelsOnFloor {
  readonly plane: FloorPlane;
  readonly patches: Readonly<Record<Side, Vec3>>;
}

/** The change of the floor's unit normal at which it counts as found: patches then move by less than 1e-9 mm. */
const SETTLED = 1e-12;

/**
 * The floor tilts by what the wheels stand apart; that moves a patch within its wheel plane by radius × tilt, nearly
 * along the floor, so each round leaves a share of about tilt × radius ÷ track: well under a half on any truck.
 */
const MOST_ROUNDS = 60;

/**
 * Finds the floor under a pose: each tire touches it where it is lowest toward it, and which place that is depends on
 * the floor, so both are found together. The rear: `follows` keeps the floor level lengthwise (it holds the direction
 * X), `stays` puts it through the point of the measured floor under the rear axle, (−wheelbase, 0, 0).
 * @param radii wheel center to floor of each wheel, in its wheel plane
 * @returns null when the rounds do not settle, or `rear` stays and there is no wheelbase.
 */
export function floorPlane(
  pose: Pick<ApartPose, Side>,
  radii: Readonly<Record<Side, number>>,
  { truck: { wheelbase }, floor }: Setup,
): WheelsOnFloor | null {
  const stays = floor?.rear === "stays";
  if (stays && wheelbase === null) return null;
  const rear: Vec3 = [-(wheelbase ?? 0), 0, 0];
  let normal: Vec3 = [0, 0, 1];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const left = lowest(pose.left.wheelCenter, pose.left.wheelAxis, radii.left, normal);
    const right = lowest(pose.right.wheelCenter, pose.right.wheelAxis, radii.right, normal);
    const next = stays
      ? normalize(cross(sub(right, rear), sub(left, rear)))
      : normalize([0, -(left[2] - right[2]), left[1] - right[1]]);
    const change = length(sub(next, normal));
    normal = next;
    if (change <= SETTLED) return { plane: { normal, offset: dot(normal, left) }, patches: { left, right } };
  }
  return null;
}

/** The point of the wheel plane `radius` from the center that is lowest toward a floor of that normal. */
function lowest(center: Vec3, axis: Vec3, radius: number, normal: Vec3): Vec3 {
  const up = normalize(addScaled(normal, axis, -dot(normal, axis)));
  return addScaled(center, up, -radius);
}

/** Height of a point over the floor, square to it, mm; negative = below. */
export function heightOver({ normal, offset }: FloorPlane, point: Vec3): number {
  return dot(normal, point) - offset;
}

/** Wheel center to floor of each wheel on its inflated tire, mm. */
export function loadedRadii({ left, right }: FrontEnd): Readonly<Record<Side, number>> {
  return { left: left.row[SIDE.loadedRadius]!, right: right.row[SIDE.loadedRadius]! };
}
