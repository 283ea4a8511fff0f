import type { BufferGeometry } from "three";
import { mergeGeometries } from "three/addons/utils/BufferGeometryUtils.js";
import type { Vec3 } from "../../geometry/vec.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { ballGeometry, rodGeometry } from "./rodGeometry.ts";

const BALL_RADIUS = 22;
const FLANGE_RADIUS = 82;
const FLANGE_THICKNESS = 10;
/** How far hub and pin stick out of the mounting face. */
const SNOUT = 38;

/** A knuckle in its own frame, from its own dimensions: ball joints, upright, pin, mounting face and steering arm. */
export function knuckleGeometry(knuckle: KnuckleSetup): BufferGeometry {
  const { span, pinHeight, pinLead, pinAngle, hubFace } = knuckle;
  /** A point on the pin, `out` mm from the steering axis. */
  const onPin = (out: number): Vec3 => [
    pinLead,
    out * Math.cos(pinAngle),
    pinHeight - out * Math.sin(pinAngle),
  ];
  const lower: Vec3 = [0, 0, 0];
  const upper: Vec3 = [0, 0, span];
  // The upright stands off the steering axis where the pin leaves it, as a forging does.
  const boss = onPin(0.22 * hubFace);
  return mergeGeometries([
    ballGeometry(lower, BALL_RADIUS),
    ballGeometry(upper, BALL_RADIUS),
    rodGeometry(lower, boss, 18, 26),
    rodGeometry(upper, boss, 15, 26),
    ballGeometry(boss, 34),
    rodGeometry(boss, onPin(hubFace - FLANGE_THICKNESS), 30, 40),
    rodGeometry(onPin(hubFace - FLANGE_THICKNESS), onPin(hubFace), FLANGE_RADIUS),
    rodGeometry(onPin(hubFace), onPin(hubFace + SNOUT), 33, 28),
    rodGeometry(lower, knuckle.steeringArm, 17, 14),
    ballGeometry(knuckle.steeringArm, 17),
  ]);
}
