import { Matrix4, Vector3 } from "three";
import type { Vec3 } from "../../geometry/vec.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import { knuckleFrameTo } from "./frames.ts";
import { hubToKnuckle } from "./knuckleGeometry.ts";
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
 * What a view of the truck must hold: both wheels straight ahead and at either lock, and the body near them.
 * Long things (a frame rail) may run out of the picture fore and aft; they would make everything else small.
 */
export function extentOf(truck: Truck): Extent {
  const { freeRadius, profile } = truck.model.tire;
  const halfWidth = 0.5 * (profile[profile.length - 2]! - profile[0]!);
  let [x, y, low, high] = [1.1 * freeRadius, 0, 0, 2 * freeRadius];
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
    for (const point of partPoints(part)) {
      if (Math.abs(point[0]) < NEAR * freeRadius) x = Math.max(x, Math.abs(point[0]));
      y = Math.max(y, Math.abs(point[1]));
      high = Math.max(high, point[2]);
    }
  }
  return { min: [-x, -y, low], max: [x, y, high] };
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

/** mm around the ball joints, and out from the mounting face, that the part and its dimensions take. */
const AROUND = 60;
/** Radius of what sits on the mounting face where the setup gives no rotor, mm. */
const FLANGE = 90;

/** What a view of one knuckle alone must hold, wherever the truck stands as measured. Vehicle axes, mm. */
export function knuckleExtent(truck: Truck, side: Side): Extent {
  const pose = solvePose(truck.model.frontEnd, 0, 0);
  const frame = pose.ok ? frameOf(pose, side) : new Matrix4();
  const { knuckle, hardware } = truck.setup;
  const face = hubToKnuckle(knuckle);
  const radius = hardware?.rotor ? 0.5 * hardware.rotor.diameter : FLANGE;
  const points = [
    new Vector3(0, -2 * AROUND, -AROUND),
    new Vector3(0, 0, knuckle.span + AROUND),
    new Vector3(...knuckle.steeringArm),
    ...[-1, 1].flatMap((sign) => [
      new Vector3(sign * radius, AROUND, 0).applyMatrix4(face),
      new Vector3(0, AROUND, sign * radius).applyMatrix4(face),
    ]),
  ].map((point) => point.applyMatrix4(frame));
  const ends = (axis: 0 | 1 | 2, of: (...values: number[]) => number) =>
    of(...points.map((point) => point.getComponent(axis)));
  return {
    min: [ends(0, Math.min), ends(1, Math.min), ends(2, Math.min)],
    max: [ends(0, Math.max), ends(1, Math.max), ends(2, Math.max)],
    points: points.map(({ x, y, z }) => [x, y, z] as const),
  };
}

function frameOf(pose: SolvedPose, side: Side): Matrix4 {
  const frame = knuckleFrameTo(new Matrix4(), pose[side].row);
  return side === "left" ? frame : new Matrix4().makeScale(1, -1, 1).multiply(frame);
}
