import { cross, dot, length, normalize, sub, type Vec3 } from "../../src/geometry/vec.ts";
import { closedOutline, type Outline, sectionDistance } from "./sectionDistance.ts";

/** A ring as the tests give it: the same numbers go to the kernel and to the referee. */
export interface RingCase {
  readonly name: string;
  readonly profile: Outline;
  readonly barrelRadius: number;
}

/** Wheel center and unit outboard axis, mm. */
export interface WheelCase {
  readonly center: Vec3;
  readonly axis: Vec3;
}

/** Axis of a left wheel: `steer` + = turned left, `camber` + = top leans outward; radians. */
export function axisOf(steer: number, camber: number): Vec3 {
  const level = Math.cos(camber);
  return [-Math.sin(steer) * level, Math.cos(steer) * level, -Math.sin(camber)];
}

/** Six numbers as the kernel takes them. */
export function wheelRow({ center, axis }: WheelCase): Float64Array {
  return Float64Array.from([...center, ...axis]);
}

/** Signed distance of points to a ring at one pose, negative inside; mm. */
export function ringDistance(ring: RingCase, wheel: WheelCase): (point: Vec3) => number {
  const outline = closedOutline(ring.profile, ring.barrelRadius);
  return (point) => {
    const d = sub(point, wheel.center);
    return sectionDistance(outline, dot(d, wheel.axis), length(cross(d, wheel.axis)));
  };
}

/** The point of space at x along the wheel axis, r from it, `turn` radians about it. */
export function aboutAxis(wheel: WheelCase, x: number, r: number, turn: number): Vec3 {
  const { center, axis } = wheel;
  const up = normalize(cross(axis, Math.abs(axis[0]) < 0.8 ? [1, 0, 0] : [0, 0, 1]));
  const side = cross(axis, up);
  const c = r * Math.cos(turn);
  const s = r * Math.sin(turn);
  return [0, 1, 2].map((i) => center[i]! + x * axis[i]! + c * up[i]! + s * side[i]!) as unknown as Vec3;
}
