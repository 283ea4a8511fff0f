import { CELL } from "../../gaps/cells/cells.ts";
import { type PartShape, partShapeOf } from "../../gaps/partShape.ts";
import { MOTION } from "../../geometry/motionRow.ts";
import { sub, type Vec3, vecAt } from "../../geometry/vec.ts";
import { POSE } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { knuckleDirectionTo } from "./carried.ts";
import { type CarriedByArm, carriedByArm, carriedByArmTo, LOWER_ARM } from "./carriedByArm.ts";

/** Something round between a point of the body and one that moves: an air spring, a shock. Left-hand frame, mm. */
export interface SpringOrShock {
  readonly bodyMount: Vec3;
  /** Its lower mount, on the lower arm or on the knuckle (then in the knuckle frame). */
  readonly lower:
    | {
        readonly on: "lowerArm";
        readonly side: Float64Array;
        readonly carried: CarriedByArm;
        /** mm. Of the circle it runs on. */
        readonly radius: number;
      }
    | { readonly on: "knuckle"; readonly point: Vec3 };
}

/** @param lower left side, vehicle axes as measured. @param side the side's constants. */
export function springOrShockOnArm(side: Float64Array, bodyMount: Vec3, lower: Vec3): SpringOrShock {
  const carried = carriedByArm(side, LOWER_ARM, sub(lower, vecAt(side, LOWER_ARM.foot)), null);
  const radius = Math.sqrt(carried.radial ** 2 + carried.quarter ** 2);
  return { bodyMount, lower: { on: "lowerArm", side, carried, radius } };
}

/** @param point of the lower mount, knuckle frame. */
export function springOrShockOnKnuckle(bodyMount: Vec3, point: Vec3): SpringOrShock {
  return { bodyMount, lower: { on: "knuckle", point } };
}

/** A round body about the line between its mounts, its ends rounded beyond them; `placeSpringOrShock` moves it. */
export function springOrShockShape(name: string, springOrShock: SpringOrShock, radius: number): PartShape {
  return partShapeOf(
    { name, kind: "path", radius, points: [springOrShock.bodyMount, springOrShock.bodyMount] },
    false,
  );
}

/**
 * The lower mount at a pose. On an arm it needs the pose's lower ball joint alone, on the knuckle its frame too.
 * Allocates nothing.
 */
export function lowerMountTo(
  out: Float64Array,
  { lower }: SpringOrShock,
  pose: Float64Array,
  poseAt: number,
): void {
  if (lower.on === "lowerArm") {
    carriedByArmTo(out, lower.side, LOWER_ARM, lower.carried, pose, poseAt);
    for (let i = 0; i < 3; i++) out[i] = out[i]! + lower.side[SIDE.lowerFoot + i]!;
    return;
  }
  knuckleDirectionTo(out, pose, poseAt, lower.point);
  for (let i = 0; i < 3; i++) out[i] = out[i]! + pose[poseAt + POSE.lowerBallJoint + i]!;
}

// Leaf scratch.
const mount = new Float64Array(3);
const otherMount = new Float64Array(3);

/** Moves the round body to a pose. */
export function placeSpringOrShock(
  shape: PartShape,
  springOrShock: SpringOrShock,
  pose: Float64Array,
  poseAt: number,
): void {
  lowerMountTo(mount, springOrShock, pose, poseAt);
  const { cells, balls, skeleton } = shape;
  let lengthSq = 0;
  for (let i = 0; i < 3; i++) {
    const body = springOrShock.bodyMount[i]!;
    const low = mount[i]!;
    cells[CELL.data + i] = body;
    cells[CELL.data + 3 + i] = low;
    balls[i] = 0.5 * (body + low);
    lengthSq += (body - low) ** 2;
    if (skeleton === null) continue;
    skeleton.corners[i] = body;
    skeleton.corners[3 + i] = low;
  }
  balls[3] = 0.5 * Math.sqrt(lengthSq) + cells[CELL.radius]!;
}

/** How far the lower mount is apart in two poses, mm: no point of the spring's or shock's line moves by more. */
export function lowerMountMotion(
  springOrShock: SpringOrShock,
  a: Float64Array,
  aAt: number,
  b: Float64Array,
  bAt: number,
): number {
  // A mount on the arm stays where the arm does, however the wheels are steered.
  if (springOrShock.lower.on === "lowerArm" && isSameJoint(a, aAt, b, bAt)) return 0;
  lowerMountTo(mount, springOrShock, a, aAt);
  lowerMountTo(otherMount, springOrShock, b, bAt);
  let sq = 0;
  for (let i = 0; i < 3; i++) sq += (mount[i]! - otherMount[i]!) ** 2;
  return Math.sqrt(sq);
}

function isSameJoint(a: Float64Array, aAt: number, b: Float64Array, bAt: number): boolean {
  return a[aAt] === b[bAt] && a[aAt + 1] === b[bAt + 1] && a[aAt + 2] === b[bAt + 2];
}

/**
 * Path of the lower mount within a cell of poses about its middle, at most, mm. On the arm: along its circle. On the
 * knuckle: with S the path that the slides of the wheel's motion sum to and Ω its turn, a point of the body at distance
 * ρ from the middle wheel center runs at most S + Ω(S/(1 − Ω) + ρ), as a point of the ring does.
 * @param motion of the wheel, as `MOTION`, with the wheel center of `pose` as reference.
 */
export function lowerMountPath(
  springOrShock: SpringOrShock,
  motion: Float64Array,
  pose: Float64Array,
  poseAt: number,
): number {
  const { lower } = springOrShock;
  if (lower.on === "lowerArm") return lower.radius * motion[MOTION.armHalf]!;
  lowerMountTo(mount, springOrShock, pose, poseAt);
  let sq = 0;
  for (let i = 0; i < 3; i++) sq += (mount[i]! - pose[poseAt + POSE.wheelCenter + i]!) ** 2;
  return bodyPath(motion, Math.sqrt(sq), 1, 1);
}

/**
 * Path, at most, of a point at `distance` from the wheel center of the middle pose that is fixed to the wheel, mm;
 * Infinity where nothing is proven. @param arm, steer 1 = counts that input's range, 0 = leaves it out of the slides.
 */
export function bodyPath(motion: Float64Array, distance: number, arm: 0 | 1, steer: 0 | 1): number {
  const armTurn = motion[MOTION.armHalf]! * motion[MOTION.armTurnMost]!;
  const steerTurn = motion[MOTION.steerHalf]! * motion[MOTION.steerTurnMost]!;
  const turn = armTurn + steerTurn;
  if (!(turn < 1)) return Number.POSITIVE_INFINITY;
  const armSlide = motion[MOTION.armHalf]! * slide(motion, MOTION.armSlide, MOTION.armSlideOff);
  const steerSlide = motion[MOTION.steerHalf]! * slide(motion, MOTION.steerSlide, MOTION.steerSlideOff);
  const off = (armSlide + steerSlide) / (1 - turn);
  return arm * (armSlide + armTurn * (off + distance)) + steer * (steerSlide + steerTurn * (off + distance));
}

function slide(row: Float64Array, at: number, offAt: number): number {
  const [x, y, z] = [row[at]!, row[at + 1]!, row[at + 2]!];
  return Math.sqrt(x * x + y * y + z * z) + row[offAt]!;
}
