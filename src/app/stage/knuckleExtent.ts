import { Matrix4, Vector3 } from "three";
import type { Side } from "../../suspension/frontEnd.ts";
import { type SolvedPose, solvePose } from "../../suspension/solvePose.ts";
import type { Truck } from "../state/truck.ts";
import type { Extent } from "./extents.ts";
import { knuckleFrameTo } from "./frames.ts";
import { hubToKnuckle } from "./knuckleGeometry.ts";

/** mm around the ball joints, and out from the mounting face, that the part and its dimensions take. */
const AROUND = 60;
/** Radius of what sits on the mounting face where the setup gives no rotor, mm. */
const FLANGE = 90;

const AS_MEASURED = { travel: 0, steer: 0 };

/**
 * What a view of one knuckle alone must hold. Vehicle axes, mm.
 * @param at the pose it stands at; one out of reach is taken as measured
 */
export function knuckleExtent(truck: Truck, side: Side, { travel, steer } = AS_MEASURED): Extent {
  const asked = solvePose(truck.model.frontEnd, travel, steer);
  const pose = asked.ok ? asked : solvePose(truck.model.frontEnd, 0, 0);
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
