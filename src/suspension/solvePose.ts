import { mirrorY, type Vec3, vecAt } from "../geometry/vec.ts";
import { type Alignment, alignmentOf } from "./alignment.ts";
import { armAngleFor, travelStatus } from "./armAngle.ts";
import type { FrontEnd, Side, SideModel } from "./frontEnd.ts";
import { POSE, POSE_ROW, poseRowTo } from "./poseRow.ts";
import { PoseStatus } from "./poseStatus.ts";
import { SIDE } from "./sideRow.ts";
import { INNER_ENDS_ROW } from "./steering.ts";

/** One side of a pose in vehicle axes (right side y < 0), mm, radians. */
export interface SidePose extends Alignment {
  readonly wheelCenter: Vec3;
  /** Unit, outboard. */
  readonly wheelAxis: Vec3;
  readonly hubFace: Vec3;
  readonly upperBallJoint: Vec3;
  readonly lowerBallJoint: Vec3;
  readonly tieRodOuter: Vec3;
  readonly tieRodInner: Vec3;
  readonly contactPatch: Vec3;
  readonly tieRodLength: number;
  /** Lower arm turned up from the measured pose, rad. */
  readonly armAngle: number;
  /** The raw row, left-hand frame (right side mirrored): the knuckle's axes for whoever draws it. */
  readonly row: Float64Array;
}

/** A pose that cannot be: which joint, on which side, and where along travel or steer it starts. */
export interface OutOfReach {
  readonly ok: false;
  readonly status: PoseStatus;
  readonly side: Side;
  /** What was being changed when the joint ran out: travel in mm or steer −1 … +1. */
  readonly along: "travel" | "steer";
  /** The last value that still closes. */
  readonly startsAt: number;
}

export interface SolvedPose {
  readonly ok: true;
  readonly travel: number;
  readonly steer: number;
  readonly left: SidePose;
  readonly right: SidePose;
}

export type PoseResult = SolvedPose | OutOfReach;

/** Both wheels at travels of their own. */
export interface ApartPose {
  readonly ok: true;
  readonly travels: Readonly<Record<Side, number>>;
  readonly steer: number;
  readonly left: SidePose;
  readonly right: SidePose;
}

/**
 * Places everything at one travel (mm, + = bump, both wheels) and one steer (−1 … +1, + = left turn).
 * At that travel the lower arm stands where straight-ahead steering puts it; steering then turns the
 * knuckle alone. Vehicle axes, mm, radians.
 */
export function solvePose(frontEnd: FrontEnd, travel: number, steer: number): PoseResult {
  const pose = solveApart(frontEnd, { left: travel, right: travel }, steer);
  if (!pose.ok) return pose;
  const { left, right } = pose;
  return { ok: true, travel, steer, left, right };
}

/**
 * As `solvePose`, each wheel at its own travel (mm, + = bump). The body is held still, so a wheel's arms, knuckle and
 * tie rod stand by its own travel and the common steer alone: the pose is the left half of one and the right half of
 * another. Nothing but the steering linkage joins the sides here: an anti-roll bar or a shared axle would.
 */
export function solveApart(
  frontEnd: FrontEnd,
  travels: Readonly<Record<Side, number>>,
  steer: number,
): ApartPose | OutOfReach {
  const tooFar = SIDES.flatMap((side) => travelBorder(frontEnd[side], side, travels[side]) ?? []);
  if (tooFar.length > 0) return nearest(tooFar);

  const ends = new Float64Array(INNER_ENDS_ROW);
  const steeringStatus = frontEnd.steering.innerEndsTo(ends, steer);
  const poses = { left: new Float64Array(POSE_ROW), right: new Float64Array(POSE_ROW) };
  const angles = { left: 0, right: 0 };
  const stuck: OutOfReach[] = [];
  for (const side of SIDES) {
    const { row } = frontEnd[side];
    const angle = armAngleFor(frontEnd[side], travels[side]);
    const at = side === "left" ? 0 : 3;
    angles[side] = angle;
    const status =
      steeringStatus === PoseStatus.Ok
        ? poseRowTo(
            poses[side],
            0,
            row,
            Math.cos(angle),
            Math.sin(angle),
            ends[at]!,
            ends[at + 1]!,
            ends[at + 2]!,
          )
        : steeringStatus;
    if (status !== PoseStatus.Ok) stuck.push(steerBorder(frontEnd, side, angle, steer));
  }
  if (stuck.length > 0) return nearest(stuck);
  return {
    ok: true,
    travels,
    steer,
    left: sidePoseOf(poses.left, frontEnd.left, angles.left, "left"),
    right: sidePoseOf(poses.right, frontEnd.right, angles.right, "right"),
  };
}

const SIDES = ["left", "right"] as const;

/** Of several borders the one met first on the way there: beyond it the front end has no pose. */
function nearest(borders: readonly OutOfReach[]): OutOfReach {
  return borders.reduce((first, next) => (Math.abs(next.startsAt) < Math.abs(first.startsAt) ? next : first));
}

function travelBorder(model: SideModel, side: Side, travel: number): OutOfReach | null {
  const status = travelStatus(model, travel);
  if (status === PoseStatus.Ok) return null;
  const end = travel > 0 ? model.reach.bump : model.reach.droop;
  return { ok: false, status, side, along: "travel", startsAt: end.travel };
}

function sidePoseOf(row: Float64Array, model: SideModel, armAngle: number, side: Side): SidePose {
  const isRight = side === "right";
  const point = (at: number): Vec3 => (isRight ? mirrorY(vecAt(row, at)) : vecAt(row, at));
  return {
    wheelCenter: point(POSE.wheelCenter),
    wheelAxis: point(POSE.wheelAxis),
    hubFace: point(POSE.hubFace),
    upperBallJoint: point(POSE.upperBallJoint),
    lowerBallJoint: point(POSE.lowerBallJoint),
    tieRodOuter: point(POSE.tieRodOuter),
    tieRodInner: point(POSE.tieRodInner),
    contactPatch: point(POSE.contactPatch),
    ...alignmentOf(row, 0, isRight),
    tieRodLength: model.row[SIDE.tieRodLength]!,
    armAngle,
    row,
  };
}

/** The largest part of `steer` that still closes at this arm angle, by bisection from straight ahead. */
function steerBorder(frontEnd: FrontEnd, side: Side, armAngle: number, steer: number): OutOfReach {
  const ends = new Float64Array(INNER_ENDS_ROW);
  const row = new Float64Array(POSE_ROW);
  const at = side === "left" ? 0 : 3;
  const [cos, sin] = [Math.cos(armAngle), Math.sin(armAngle)];
  const statusAt = (s: number): PoseStatus => {
    const linkage = frontEnd.steering.innerEndsTo(ends, s);
    if (linkage !== PoseStatus.Ok) return linkage;
    return poseRowTo(row, 0, frontEnd[side].row, cos, sin, ends[at]!, ends[at + 1]!, ends[at + 2]!);
  };
  let good = 0;
  let bad = steer;
  // What stops it at the border, which may not be what stops it at `steer`.
  let status = statusAt(steer);
  // Bounded, so that an infinite steer cannot bisect forever.
  for (let step = 0; step < 100 && Math.abs(bad - good) > 1e-9; step++) {
    const middle = 0.5 * (good + bad);
    const found = statusAt(middle);
    if (found === PoseStatus.Ok) good = middle;
    else {
      bad = middle;
      status = found;
    }
  }
  return { ok: false, status, side, along: "steer", startsAt: good };
}
