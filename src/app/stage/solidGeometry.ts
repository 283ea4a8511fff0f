import {
  BufferGeometry,
  ConeGeometry,
  CylinderGeometry,
  Float32BufferAttribute,
  LatheGeometry,
  Matrix4,
  Quaternion,
  SphereGeometry,
  Vector2,
  Vector3,
} from "three";
import { mergeGeometries } from "three/addons/utils/BufferGeometryUtils.js";
import type { Vec3 } from "../../geometry/vec.ts";
import type { ArmSetup } from "../../setup/types/truckTypes.ts";
import { transformed } from "./frames.ts";
import { frameTo } from "./frameTo.ts";

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

const UP = new Vector3(0, 1, 0);

/** Faces round something: fewer where it is too thin for them to be seen. @param radius mm */
const facesRound = (radius: number) => (radius < 6 ? 8 : 20);

/** A round bar from one point to another. @param endRadius at `to`; default the same all along */
export function rodGeometry(from: Vec3, to: Vec3, radius: number, endRadius = radius): BufferGeometry {
  const a = new Vector3(...from);
  const along = new Vector3(...to).sub(a);
  const length = along.length();
  const turn = new Quaternion().setFromUnitVectors(UP, along.normalize());
  return new CylinderGeometry(endRadius, radius, length, facesRound(Math.max(radius, endRadius)))
    .translate(0, 0.5 * length, 0)
    .applyQuaternion(turn)
    .translate(a.x, a.y, a.z);
}

/** A ball at a point. */
export function ballGeometry(at: Vec3, radius: number): BufferGeometry {
  return new SphereGeometry(radius, facesRound(radius), Math.round(0.6 * facesRound(radius))).translate(
    at[0],
    at[1],
    at[2],
  );
}

/** A cone with its point at the origin, open along +x. @param half angle, radians; @param length mm, along its side */
export function coneGeometry(half: number, length: number): BufferGeometry {
  const height = length * Math.cos(half);
  // Three's own stands on its base along +y, its point up.
  return new ConeGeometry(length * Math.sin(half), height, 32, 1, true)
    .translate(0, -0.5 * height, 0)
    .rotateZ(0.5 * Math.PI);
}

/** Lines of such a cone: its rim and so many lines from the point to it. */
export function coneLines(half: number, length: number, spokes: number): BufferGeometry {
  const x = length * Math.cos(half);
  const r = length * Math.sin(half);
  const at = (turn: number): [number, number, number] => [x, r * Math.cos(turn), r * Math.sin(turn)];
  const positions: number[] = [];
  const steps = 48;
  for (let i = 0; i < steps; i++) {
    positions.push(...at((2 * Math.PI * i) / steps), ...at((2 * Math.PI * (i + 1)) / steps));
  }
  for (let i = 0; i < spokes; i++) positions.push(0, 0, 0, ...at((2 * Math.PI * i) / spokes));
  return new BufferGeometry().setAttribute("position", new Float32BufferAttribute(positions, 3));
}

/** mm. Drawn so that a pivot looks like one; they stay on the frame and are not measured. */
const BUSHING_RADIUS = 26;
const BUSHING_LENGTH = 60;

/** A control arm in the frame of its own three points (`frameTo`): two legs, a bushing on each pivot. @param radius of a leg, mm; @param taper its radius at the ball joint, as a share */
export function armGeometry(arm: ArmSetup, radius: number, taper: number): BufferGeometry {
  const toFrame = frameTo(new Matrix4(), arm.frontPivot, arm.rearPivot, arm.ballJoint).invert();
  const inFrame = (point: Vec3) => transformed(point, toFrame);
  const front = inFrame(arm.frontPivot);
  const rear = inFrame(arm.rearPivot);
  const joint = inFrame(arm.ballJoint);
  const bushing = (at: Vec3) =>
    new CylinderGeometry(BUSHING_RADIUS, BUSHING_RADIUS, BUSHING_LENGTH, 20)
      .rotateZ(Math.PI / 2)
      .translate(at[0], at[1], at[2]);
  return mergeGeometries([
    rodGeometry(front, joint, radius, taper * radius),
    rodGeometry(rear, joint, radius, taper * radius),
    bushing(front),
    bushing(rear),
  ]);
}
