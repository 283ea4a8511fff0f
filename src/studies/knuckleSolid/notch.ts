import { addScaled, dot, sub, type Vec3 } from "../../geometry/vec.ts";

/**
 * What the end of a tube is cut to: the round of another member or of the pin (endless along its axis), or a flat face.
 * `axis` and `normal` are of unit length. mm, any frame, the tube's own.
 */
export type Cutter =
  | { readonly kind: "cylinder"; readonly point: Vec3; readonly axis: Vec3; readonly radius: number }
  | { readonly kind: "plane"; readonly point: Vec3; readonly normal: Vec3 };

/** The end of a round member: where its joint is, which way the member leaves it, and where wrapping starts. Unit directions. */
export interface RoundEnd {
  readonly at: Vec3;
  readonly along: Vec3;
  /** Square to `along`: the line scribed along the member, wrap angle 0. */
  readonly mark: Vec3;
  /** `along` × `mark`: wrap angle a quarter turn, counterclockwise seen against `along`. */
  readonly side: Vec3;
}

/** Where a line along the tube meets what it is cut to. */
export interface Cut {
  /** From the joint along the member to where the material begins. */
  readonly from: number;
  /** Whether the line meets it; else `from` is where it passes nearest to the axis of the round. */
  readonly meets: boolean;
}

/** The end is flat and square at its joint, or `past` mm beyond it. */
export function squareCut(end: RoundEnd, past = 0): Cutter {
  return { kind: "plane", point: addScaled(end.at, end.along, -past), normal: end.along };
}

/**
 * Where the line along a member at wrap angle `wrap` and `radius` from its axis leaves a cutter: the far one of its two
 * meetings with a round, since the member lies beyond it. Exact. For equal tubes at a right angle this is R·|cos wrap|.
 * @throws RangeError for a line along the cutter's own axis or plane, which never leaves it
 */
export function cutAt(end: RoundEnd, cutter: Cutter, radius: number, wrap: number): Cut {
  const { along } = end;
  const from = sub(pointOn(end, 0, radius, wrap), cutter.point);
  if (cutter.kind === "plane") {
    const slope = dot(along, cutter.normal);
    if (slope === 0) throw new RangeError("cutAt: the member runs along the face it is cut to");
    return { from: -dot(from, cutter.normal) / slope, meets: true };
  }
  // Both without their share along the cutter's axis: what is left is a line and a circle.
  const way = addScaled(along, cutter.axis, -dot(along, cutter.axis));
  const off = addScaled(from, cutter.axis, -dot(from, cutter.axis));
  const square = dot(way, way);
  if (!(square > 0)) throw new RangeError("cutAt: the member runs along the round it is cut to");
  const half = dot(way, off);
  const under = half * half - square * (dot(off, off) - cutter.radius ** 2);
  return { from: (Math.sqrt(Math.max(0, under)) - half) / square, meets: under >= 0 };
}

/** The place on a member's round at `radius`, `from` along it. */
export function pointOn(
  { at, along, mark, side }: RoundEnd,
  from: number,
  radius: number,
  wrap: number,
): Vec3 {
  const onAxis = addScaled(at, along, from);
  return addScaled(addScaled(onAxis, mark, radius * Math.cos(wrap)), side, radius * Math.sin(wrap));
}

/** Halvings by thirds of the wall: far below what any saw follows. */
const THIRDS = 60;

/**
 * Where a wall cut with the blade pointed at the member's axis must begin so that none of it is in the way, from `inner` to
 * `outer` radius. Along the radius the meeting is a concave function (a straight one plus the root of a concave square), so
 * its one highest place is found by thirds.
 */
export function cutThroughWall(
  end: RoundEnd,
  cutter: Cutter,
  inner: number,
  outer: number,
  wrap: number,
): number {
  const from = (radius: number) => cutAt(end, cutter, radius, wrap).from;
  let [low, high] = [inner, outer];
  for (let i = 0; i < THIRDS; i++) {
    const third = (high - low) / 3;
    if (from(low + third) < from(high - third)) low += third;
    else high -= third;
  }
  return Math.max(from(inner), from(outer), from((low + high) / 2));
}
