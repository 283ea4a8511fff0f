import { MOTION } from "../../geometry/motionRow.ts";
import { addScaled, cross, dot, normalize, type Vec3, vecAt } from "../../geometry/vec.ts";
import type { BallJointLimit } from "../../setup/types/limitsTypes.ts";
import { type CellMotion, carriedPathTo, knuckleDirectionTo } from "../model/carried.ts";
import {
  type ArmAt,
  armAxisOf,
  type CarriedByArm,
  carriedByArm,
  carriedByArmTo,
  LOWER_ARM,
  UPPER_ARM,
} from "../model/carriedByArm.ts";
import type { FrontEndLimit, LimitPlace } from "./frontEndLimit.ts";

// Leaf scratch.
const stud = new Float64Array(3);
const housing = new Float64Array(3);
const aside = new Float64Array(3);
const path = new Float64Array(2);
const relative = new Float64Array(3);

/** A ball joint's own axes, fixed in its arm: the housing's axis, forward along the pivot line, and in or out. */
export interface JointAxes {
  readonly arm: ArmAt;
  /** In the knuckle frame. */
  readonly stud: Vec3;
  readonly housing: CarriedByArm;
  readonly foreAft: CarriedByArm;
  readonly inOut: CarriedByArm;
}

/** A joint's axes from its limit. @param rest the side's pose at travel 0, straight ahead. */
export function jointAxesOf(
  side: Float64Array,
  arm: ArmAt,
  limit: BallJointLimit,
  rest: Float64Array,
): JointAxes {
  const local: Vec3 = limit.stud ?? [0, 0, 1];
  knuckleDirectionTo(stud, rest, 0, local);
  const atRest = vecAt(stud, 0);
  // A line rather than a direction is typed: the way that is nearer the stud at rest is meant.
  let axis = carriedByArm(side, arm, limit.housing ?? atRest, limit.housing ? null : rest);
  carriedByArmTo(housing, side, arm, axis, rest, 0);
  if (dot(vecAt(housing, 0), atRest) < 0) axis = { ...axis, ...negated(axis) };
  carriedByArmTo(housing, side, arm, axis, rest, 0);
  const up = vecAt(housing, 0);
  const pivotLine = armAxisOf(side, arm);
  // Square to the housing's axis; where that lies along the pivot line, forward does instead.
  const along = addScaled(pivotLine, up, -dot(pivotLine, up));
  const forward = dot(along, along) > 1e-12 ? normalize(along) : normalize(squareTo(up));
  const across = cross(up, forward);
  return {
    arm,
    stud: local,
    housing: axis,
    foreAft: carriedByArm(side, arm, forward, rest),
    inOut: carriedByArm(side, arm, across, rest),
  };
}

function negated({ along, radial, quarter }: CarriedByArm) {
  return { along: -along, radial: -radial, quarter: -quarter };
}

function squareTo(up: Vec3): Vec3 {
  return addScaled([0, 0, 1], up, -up[2]);
}

/** The limits of one ball joint: its cone, and each of its two axes where the setup limits it. */
export function ballJointLimits(
  name: "upper ball joint" | "lower ball joint",
  side: Float64Array,
  limit: BallJointLimit,
  rest: Float64Array,
): FrontEndLimit[] {
  const arm = name === "upper ball joint" ? UPPER_ARM : LOWER_ARM;
  const axes = jointAxesOf(side, arm, limit, rest);
  const limits = [coneLimit(name, axes, limit.cone)];
  if (limit.inOut !== null) limits.push(axisLimit(`${name}, in and out`, axes, axes.inOut, limit.inOut));
  if (limit.foreAft !== null)
    limits.push(axisLimit(`${name}, fore and aft`, axes, axes.foreAft, limit.foreAft));
  return limits;
}

/** A direction that an arm carries, worked out anew only where its ball joint has moved: steering moves no arm. */
class ArmDirection {
  private readonly joint = new Float64Array(3).fill(Number.NaN);
  private readonly now = new Float64Array(3);

  constructor(
    private readonly arm: ArmAt,
    private readonly carried: CarriedByArm,
  ) {}

  at({ side, pose, poseAt }: LimitPlace): Float64Array {
    const { arm, joint, now } = this;
    const x = pose[poseAt + arm.joint]!;
    const y = pose[poseAt + arm.joint + 1]!;
    const z = pose[poseAt + arm.joint + 2]!;
    if (x === joint[0] && y === joint[1] && z === joint[2]) return now;
    joint[0] = x;
    joint[1] = y;
    joint[2] = z;
    carriedByArmTo(now, side, arm, this.carried, pose, poseAt);
    return now;
  }
}

function coneLimit(name: string, axes: JointAxes, cone: number): FrontEndLimit {
  const housing = new ArmDirection(axes.arm, axes.housing);
  return {
    name,
    measure: "angle",
    range: cone,
    margin: (place) => {
      knuckleDirectionTo(stud, place.pose, place.poseAt, axes.stud);
      const axis = housing.at(place);
      return cone - Math.atan2(crossWith(axis, 0), dotWithStud(axis));
    },
    spreadTo: (out, place, cell) => relativePathTo(out, axes.arm, axes.stud, place, cell),
  };
}

/** Lean in one plane of the joint: between the housing's axis and the stud, seen along the other. */
function axisLimit(name: string, axes: JointAxes, toward: CarriedByArm, most: number): FrontEndLimit {
  const housing = new ArmDirection(axes.arm, axes.housing);
  const across = new ArmDirection(axes.arm, toward);
  const partsAt = (place: LimitPlace): void => {
    knuckleDirectionTo(stud, place.pose, place.poseAt, axes.stud);
    path[0] = dotWithStud(across.at(place));
    path[1] = dotWithStud(housing.at(place));
  };
  return {
    name,
    measure: "angle",
    range: most,
    margin: (place) => {
      partsAt(place);
      return most - Math.abs(Math.atan2(path[0]!, path[1]!));
    },
    spreadTo: (out, place, cell) => {
      partsAt(place);
      const seen = Math.sqrt(path[0]! ** 2 + path[1]! ** 2);
      relativePathTo(out, axes.arm, axes.stud, place, cell);
      // What is seen of the stud may be shorter than it, and turns the faster for that.
      const least = seen - out[0]! - out[1]!;
      const per = least > 0 ? 1 / least : Number.POSITIVE_INFINITY;
      out[0] = out[0]! > 0 ? out[0]! * per : 0;
      out[1] = out[1]! > 0 ? out[1]! * per : 0;
    },
  };
}

/**
 * Path of the stud as the arm sees it: its velocity there is (ω − u·a) × s, a the arm's pivot line and u the arm's
 * turn per radian of lower arm: 1 of the lower arm itself; of the upper arm the speed of its ball joint, v·t̂/R, whose
 * change is bounded as that of v = v_lower + ω × (upper − lower) and of the tangent t̂, which turns by u itself.
 */
function relativePathTo(
  out: Float64Array,
  arm: ArmAt,
  local: Vec3,
  { side, pose, poseAt: at }: LimitPlace,
  cell: CellMotion,
): void {
  const { motion, armHalf, steerHalf } = cell;
  if (cell.displaced) {
    out[0] = armHalf * motion[MOTION.armTurnMost]! + armTurnAway(side, arm, pose, at, cell);
    out[1] = 0;
    return;
  }
  knuckleDirectionTo(stud, pose, at, local);
  carriedPathTo(path, cell, stud);
  const off = path[0]! + path[1]!;
  const omegaOff = motion[MOTION.armTurnOff]!;
  let rate = 1;
  let rateOff = 0;
  if (arm === UPPER_ARM) {
    upperRateTo(rateAndOff, side, pose, at, cell);
    rate = rateAndOff[0]!;
    rateOff = rateAndOff[1]!;
  }
  armAxisTo(aside, side, arm);
  for (let i = 0; i < 3; i++) relative[i] = motion[MOTION.armTurn + i]! - rate * aside[i]!;
  const relativeOff = omegaOff + rateOff;
  const relativeMost = sizeAt(relative, 0) + relativeOff;
  out[0] = armHalf * (crossWith(relative, 0) + relativeOff + (armHalf > 0 ? relativeMost * off : 0));
  out[1] =
    steerHalf *
    (crossWith(motion, MOTION.steerTurn) +
      motion[MOTION.steerTurnOff]! +
      (steerHalf > 0 ? motion[MOTION.steerTurnMost]! * off : 0));
}

/**
 * How far an arm can be turned from the middle of a cell at the border of reach. The upper ball joint is no farther
 * from there than the lower one goes and the span turns, both counted from a pose amid the cell and back; an angle is at
 * most π/2 times its chord over the radius.
 */
function armTurnAway(
  side: Float64Array,
  arm: ArmAt,
  pose: Float64Array,
  at: number,
  { motion, armHalf }: CellMotion,
): number {
  if (arm === LOWER_ARM) return armHalf;
  let spanSq = 0;
  for (let i = 0; i < 3; i++) spanSq += (pose[at + 3 + i]! - pose[at + i]!) ** 2;
  const turn = armHalf * motion[MOTION.armTurnMost]!;
  const chord = 2 * (sizeAt(side, LOWER_ARM.radial) * armHalf + Math.sqrt(spanSq) * turn);
  const radius = sizeAt(side, UPPER_ARM.radial);
  return chord < radius ? (0.5 * Math.PI * chord) / radius : Number.POSITIVE_INFINITY;
}

const rateAndOff = new Float64Array(2);
const velocity = new Float64Array(3);

/** The upper arm's turn per radian of lower arm at the middle, and how far it can be from that in the cell. */
function upperRateTo(
  out: Float64Array,
  side: Float64Array,
  pose: Float64Array,
  at: number,
  { motion, armHalf, cosArm, sinArm }: CellMotion,
): void {
  let lowerSq = 0;
  let upperSq = 0;
  let spanSq = 0;
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    const alongJ = pose[at + 3 + j]! - pose[at + j]!;
    const alongK = pose[at + 3 + k]! - pose[at + k]!;
    velocity[i] =
      cosArm * side[LOWER_ARM.quarter + i]! -
      sinArm * side[LOWER_ARM.radial + i]! +
      motion[MOTION.armTurn + j]! * alongK -
      motion[MOTION.armTurn + k]! * alongJ;
    lowerSq += side[LOWER_ARM.radial + i]! ** 2;
    upperSq += side[UPPER_ARM.radial + i]! ** 2;
    spanSq += (pose[at + 3 + i]! - pose[at + i]!) ** 2;
  }
  const radius = Math.sqrt(upperSq);
  const span = Math.sqrt(spanSq);
  armAxisTo(aside, side, UPPER_ARM);
  let forward = 0;
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    const dj = pose[at + 3 + j]! - side[UPPER_ARM.foot + j]!;
    const dk = pose[at + 3 + k]! - side[UPPER_ARM.foot + k]!;
    forward += (velocity[i]! * (aside[j]! * dk - aside[k]! * dj)) / radius;
  }
  const speed = sizeAt(velocity, 0);
  const most = motion[MOTION.armTurnMost]!;
  const off = Math.sqrt(lowerSq) * armHalf + span * motion[MOTION.armTurnOff]! + most * span * armHalf * most;
  out[0] = forward / radius;
  out[1] = (off + speed * ((speed + off) / radius) * armHalf) / radius;
}

function armAxisTo(out: Float64Array, side: Float64Array, arm: ArmAt): void {
  let sizeSq = 0;
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3;
    const k = (i + 2) % 3;
    out[i] = side[arm.radial + j]! * side[arm.quarter + k]! - side[arm.radial + k]! * side[arm.quarter + j]!;
    sizeSq += side[arm.radial + i]! ** 2;
  }
  for (let i = 0; i < 3; i++) out[i] = out[i]! / sizeSq;
}

/** |row[at..] × stud|. */
function crossWith(row: Float64Array, at: number): number {
  const x = row[at + 1]! * stud[2]! - row[at + 2]! * stud[1]!;
  const y = row[at + 2]! * stud[0]! - row[at]! * stud[2]!;
  const z = row[at]! * stud[1]! - row[at + 1]! * stud[0]!;
  return Math.sqrt(x * x + y * y + z * z);
}

function dotWithStud(v: Float64Array): number {
  return stud[0]! * v[0]! + stud[1]! * v[1]! + stud[2]! * v[2]!;
}

function sizeAt(row: Float64Array, at: number): number {
  return Math.sqrt(row[at]! ** 2 + row[at + 1]! ** 2 + row[at + 2]! ** 2);
}
