import { cross, dot, length, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { FrontEnd } from "../../suspension/frontEnd.ts";
import { type SidePose, solvePose } from "../../suspension/solvePose.ts";

/** The dimensions of a knuckle that put its hub face somewhere. mm; the pin's angle stays. */
export interface HubFacePlace {
  readonly hubFace: number;
  readonly pinHeight: number;
  readonly pinLead: number;
}

/** Where a knuckle stands in its truck as measured, wheels straight ahead; left side, vehicle axes, mm. */
export interface KnuckleInTruck {
  /** Where the pin meets the wheel mounting face: the middle of the hub face. */
  readonly hubFace: Vec3;
  /** Center of the outer tie rod end. */
  readonly tieRodEnd: Vec3;
  /** The knuckle of the same pin angle whose hub face has its middle there. */
  hubFaceAt(point: Vec3): HubFacePlace;
  /** The outer tie rod end in the knuckle frame for one that stands there. */
  steeringArmAt(point: Vec3): Vec3;
}

/**
 * The knuckle by points in the truck's axes, as a tape reads them, and back. What is changed stands where it was given as
 * long as ball joints, pin angle and toe stay as they are.
 * @returns null where the truck cannot stand as measured
 */
export function knuckleInTruck(frontEnd: FrontEnd, pinAngle: number): KnuckleInTruck | null {
  const pose = solvePose(frontEnd, 0, 0);
  if (!pose.ok) return null;
  const { left } = pose;
  const inKnuckle = knuckleAxes(left);
  return {
    hubFace: left.hubFace,
    tieRodEnd: left.tieRodOuter,
    hubFaceAt(point) {
      // The pin starts at (lead, 0, height) and points along (0, cos a, −sin a).
      const [x, y, z] = inKnuckle(point);
      return { hubFace: y / Math.cos(pinAngle), pinHeight: z + y * Math.tan(pinAngle), pinLead: x };
    },
    steeringArmAt: inKnuckle,
  };
}

/** A point of the truck in the knuckle frame: origin at the lower joint, z up the steering axis, x ahead, square to the pin. */
function knuckleAxes({ lowerBallJoint, upperBallJoint, wheelAxis }: SidePose): (point: Vec3) => Vec3 {
  const axis = sub(upperBallJoint, lowerBallJoint);
  const z = scale(axis, 1 / length(axis));
  const ahead = cross(wheelAxis, z);
  const x = scale(ahead, 1 / length(ahead));
  const y = cross(z, x);
  return (point) => {
    const from = sub(point, lowerBallJoint);
    return [dot(from, x), dot(from, y), dot(from, z)];
  };
}
