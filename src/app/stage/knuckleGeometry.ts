import { BoxGeometry, BufferGeometry, Matrix4, Vector3 } from "three";
import { mergeGeometries } from "three/addons/utils/BufferGeometryUtils.js";
import type { Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { CaliperSetup, HardwareSetup, KnuckleSetup, RotorSetup } from "../../setup/types/types.ts";
import { ballGeometry, latheGeometry, rodGeometry } from "./solidGeometry.ts";

/** Not measured, drawn so that the wheel has something to sit on: pin, flange at the mounting face, hub. */
const PIN_RADIUS = 28;
const FLANGE = { radius: 76, thickness: 10, hub: 32, snout: 34 } as const;

/** Radius of a ball by the diameter of its stud: a likeness. */
const BALL_SHARE = 0.75;

/** From the hub frame (middle of the hub face, y along the pin) to the knuckle frame. */
export function hubToKnuckle({ pinLead, pinHeight, pinAngle, hubFace }: KnuckleSetup): Matrix4 {
  const cos = Math.cos(pinAngle);
  const sin = Math.sin(pinAngle);
  return new Matrix4()
    .makeBasis(new Vector3(1, 0, 0), new Vector3(0, cos, -sin), new Vector3(0, sin, cos))
    .setPosition(pinLead, hubFace * cos, pinHeight - hubFace * sin);
}

/** The knuckle as its gaps are measured: housings, body, steering arm and rod end at their radii. Knuckle frame. */
export function knuckleBodyGeometry(knuckle: KnuckleSetup, hardware: HardwareSetup): BufferGeometry {
  const lower: Vec3 = [0, 0, 0];
  const upper: Vec3 = [0, 0, knuckle.span];
  const end = knuckle.steeringArm;
  const root: Vec3 = [0, 0, Math.min(Math.max(end[2], 0), knuckle.span)];
  const bar = (from: Vec3, to: Vec3, radius: number) => [
    rodGeometry(from, to, radius),
    ballGeometry(to, radius),
  ];
  return mergeGeometries([
    ballGeometry(lower, hardware.lowerBallJoint.radius),
    ballGeometry(upper, hardware.upperBallJoint.radius),
    rodGeometry(lower, upper, hardware.knuckle.radius),
    ...bar(root, end, hardware.steeringArm.radius),
    ballGeometry(end, hardware.tieRodEnd.radius),
    pinGeometry(knuckle),
  ]);
}

/** The brake disk. Knuckle frame. */
export function rotorGeometry(
  knuckle: KnuckleSetup,
  { diameter, thickness, inboard }: RotorSetup,
): BufferGeometry {
  const [outer, inner] = [-inboard, -inboard - thickness];
  const radius = 0.5 * diameter;
  return latheGeometry([inner, 0, inner, radius, outer, radius, outer, 0]).applyMatrix4(
    hubToKnuckle(knuckle),
  );
}

/** The caliper's box. Knuckle frame. */
export function caliperGeometry(knuckle: KnuckleSetup, { frame, min, max }: CaliperSetup): BufferGeometry {
  const size = [0, 1, 2].map((axis) => max[axis]! - min[axis]!) as [number, number, number];
  const middle = [0, 1, 2].map((axis) => 0.5 * (max[axis]! + min[axis]!)) as [number, number, number];
  const box = new BoxGeometry(...size).translate(...middle);
  return frame === "hub" ? box.applyMatrix4(hubToKnuckle(knuckle)) : box;
}

/** Of the ball joints the balls and their studs, up to the taper's large end, toward the part. Knuckle frame; empty where none is given. */
export function studsGeometry(studs: BuildSetup["studs"], span: number): BufferGeometry {
  const shapes = studs.flatMap(({ joint, diameter, reach }) => {
    if (joint === "tieRodOuter") return [];
    const [center, way] = joint === "lowerBallJoint" ? [0, 1] : [span, -1];
    const [ball, end]: [Vec3, Vec3] = [
      [0, 0, center],
      [0, 0, center + way * reach],
    ];
    return [ballGeometry(ball, BALL_SHARE * diameter), rodGeometry(ball, end, 0.5 * diameter)];
  });
  return shapes.length === 0 ? new BufferGeometry() : mergeGeometries(shapes);
}

function pinGeometry(knuckle: KnuckleSetup): BufferGeometry {
  const { hubFace } = knuckle;
  const { radius, thickness, hub, snout } = FLANGE;
  return mergeGeometries([
    rodGeometry([0, -hubFace, 0], [0, -thickness, 0], PIN_RADIUS),
    rodGeometry([0, -thickness, 0], [0, 0, 0], radius),
    rodGeometry([0, 0, 0], [0, snout, 0], hub, 0.85 * hub),
  ]).applyMatrix4(hubToKnuckle(knuckle));
}

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
