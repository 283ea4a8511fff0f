import { MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE, POSE_ROW } from "../../suspension/poseRow.ts";

const MOTION_AT = 9 + POSE_ROW;
const BORDER_AT = MOTION_AT + MOTION_ROW;

/**
 * A row a cell: middle and half range of arm and steer; the pose row at the middle; velocity of the inner tie rod end
 * there and its `InnerEndSpread` over the cell; the motion proven over the cell; what `steeredBorderTo` said (wheel,
 * lower ball joint, knuckle frame, inner tie rod end and how far that can be off, slide, turn, the
 * steering's part of it, how much of it is about the steering axis).
 */
export const CELL_OF_POSES = {
  arm: 0,
  armHalf: 1,
  steer: 2,
  steerHalf: 3,
  pose: 4,
  wheel: 4 + POSE.wheelCenter,
  innerVelocity: 4 + POSE_ROW,
  innerSpeedMost: 7 + POSE_ROW,
  innerVelocityOff: 8 + POSE_ROW,
  motion: MOTION_AT,
  borderWheel: BORDER_AT,
  borderJoint: BORDER_AT + 6,
  borderKnuckle: BORDER_AT + 9,
  borderInner: BORDER_AT + 18,
  borderInnerOff: BORDER_AT + 21,
  slide: BORDER_AT + 22,
  turn: BORDER_AT + 23,
  steerTurn: BORDER_AT + 24,
  spin: BORDER_AT + 25,
} as const;
export const CELL_OF_POSES_ROW = BORDER_AT + 26;

/** What is known of a cell of poses, as bits. */
export const Known = {
  /** The steering can take the middle. */
  Steers: 1,
  /** This side's wheel, the other side's wheel can take the middle. */
  Stands: 2,
  OtherStands: 4,
  /** The motion row holds all over the cell. */
  Moves: 8,
  /** Looked at for the border of reach; then no pose is in it, or the border's pose bounds it. */
  AtBorder: 16,
  Empty: 32,
  Bounded: 64,
  /** Looked at for the other side's reach; then the other side can take no pose of it. */
  Other: 128,
  OtherEmpty: 256,
  /** Looked at for limits; then every pose keeps them all, or every pose passes one. */
  Limits: 512,
  Kept: 1024,
  Passed: 2048,
} as const;
