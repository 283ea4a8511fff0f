import type { Vec3 } from "../../geometry/vec.ts";
import type { BodyPart } from "../../setup/types.ts";
import { solvePose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";

/** A box aligned with the vehicle axes. */
export interface Extent {
  readonly min: Vec3;
  readonly max: Vec3;
}

/**
 * What a view of the truck must hold: both wheels straight ahead and at either lock, and the body near them.
 * Long things (a frame rail) may run out of the picture fore and aft; they would make everything else small.
 */
export function extentOf(truck: Truck): Extent {
  const { freeRadius, profile } = truck.model.ring;
  const halfWidth = 0.5 * (profile[profile.length - 2]! - profile[0]!);
  let [y, low, high] = [0, 0, 2 * freeRadius];
  for (const steer of [0, -1, 1]) {
    const pose = solvePose(truck.model.frontEnd, 0, steer);
    if (!pose.ok) continue;
    for (const side of [pose.left, pose.right]) {
      const turned = Math.abs(side.wheelAxis[0]);
      y = Math.max(y, Math.abs(side.wheelCenter[1]) + halfWidth + turned * freeRadius);
      low = Math.min(low, side.contactPatch[2]);
      high = Math.max(high, side.wheelCenter[2] + freeRadius);
    }
  }
  for (const part of truck.setup.truck.body) {
    for (const point of pointsOf(part)) {
      y = Math.max(y, Math.abs(point[1]));
      high = Math.max(high, point[2]);
    }
  }
  const reach = 1.2 * freeRadius;
  return { min: [-reach, -y, low], max: [reach, y, high] };
}

function pointsOf(part: BodyPart): readonly Vec3[] {
  if (part.kind === "path") return part.points;
  return part.kind === "box" ? [part.min, part.max] : part.vertices;
}
