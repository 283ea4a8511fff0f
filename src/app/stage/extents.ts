import type { Vec3 } from "../../geometry/vec.ts";
import type { BodyPart } from "../../setup/types/truckTypes.ts";
import { boxOf } from "../../studies/worksheet/scanMove.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { partPoints } from "./partPoints.ts";

/** A box aligned with the vehicle axes. */
export interface Extent {
  readonly min: Vec3;
  readonly max: Vec3;
  /** Where only these need be in the picture, not all of the box. */
  readonly points?: readonly Vec3[];
}

/** Free radii fore and aft within which the body is near the wheels. */
const NEAR = 1.8;

/**
 * What a view of the truck must hold: both wheels straight ahead and at either lock, from full droop to full bump, and the
 * body near them.
 * Long things (a frame rail) may run out of the picture fore and aft; they would make everything else small.
 */
export function extentOf(truck: Truck): Extent {
  const { freeRadius, profile } = truck.model.tire;
  const halfWidth = 0.5 * (profile[profile.length - 2]! - profile[0]!);
  let [x, y, low, high] = [1.1 * freeRadius, 0, 0, 2 * freeRadius];
  const { droop, bump } = truck.setup.travel;
  const poses = [0, droop, bump].flatMap((travel) =>
    [0, -1, 1].map((steer) => solvePose(truck.model.frontEnd, travel, steer)),
  );
  for (const pose of poses) {
    if (!pose.ok) continue;
    for (const side of [pose.left, pose.right]) {
      const turned = Math.abs(side.wheelAxis[0]);
      y = Math.max(y, Math.abs(side.wheelCenter[1]) + halfWidth + turned * freeRadius);
      low = Math.min(low, side.wheelCenter[2] - freeRadius);
      high = Math.max(high, side.wheelCenter[2] + freeRadius);
    }
  }
  for (const part of truck.setup.truck.body) {
    for (const point of partPoints(part)) {
      if (Math.abs(point[0]) < NEAR * freeRadius) x = Math.max(x, Math.abs(point[0]));
      y = Math.max(y, Math.abs(point[1]));
      high = Math.max(high, point[2]);
    }
  }
  return { min: [-x, -y, low], max: [x, y, high] };
}

/** What a view of one body part must hold. */
export function partExtent(part: BodyPart): Extent {
  const [min, max] = boxOf([...partPoints(part)].flat());
  return { min, max };
}

/** What the view from a wheel well must hold: one tire at any steering angle and height near the one measured, and its arch. */
export function wellExtent(truck: Truck, side: Side): Extent {
  const { freeRadius } = truck.model.tire;
  const pose = solvePose(truck.model.frontEnd, 0, 0);
  const [x, y, z] = pose.ok ? pose[side].wheelCenter : [0, side === "left" ? 750 : -750, freeRadius];
  const reach = 1.12 * freeRadius;
  const across = 0.45 * freeRadius;
  return { min: [x - reach, y - across, z - reach], max: [x + reach, y + across, z + 1.3 * freeRadius] };
}
