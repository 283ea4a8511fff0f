import { MOTION } from "../../geometry/motionRow.ts";
import { CELL_OF_POSES } from "./cellOfPoses.ts";
import { Cut } from "./nodes.ts";

/** Share of the wheel's way by which it may leave its speed at the middle, for the part to be cut into pieces. */
const EVEN_SHARE = 0.5;

/** mm. How far a point can be from where it is at the border's pose, seen from the wheel: slide and turn at a lever. */
export function borderWay(rows: Float64Array, poseAt: number, lever: number): number {
  return rows[poseAt + CELL_OF_POSES.slide]! + rows[poseAt + CELL_OF_POSES.turn]! * lever;
}

/** The range that makes that way long. */
export function borderCut(rows: Float64Array, poseAt: number, lever: number): Cut {
  const bySteer = rows[poseAt + CELL_OF_POSES.steerTurn]! * lever;
  return borderWay(rows, poseAt, lever) > 2 * bySteer ? Cut.Arm : Cut.Steer;
}

/** mm. From the lower ball joint of the border's pose to a point. */
export function leverTo(rows: Float64Array, poseAt: number, point: Float64Array, pointAt: number): number {
  let sq = 0;
  for (let i = 0; i < 3; i++)
    sq += (point[pointAt + i]! - rows[poseAt + CELL_OF_POSES.borderJoint + i]!) ** 2;
  return Math.sqrt(sq);
}

/**
 * Whether the motion proven over a cell of poses differs little from that at its middle, compared with what is known
 * of it without any speed: near the border of reach it does not, and pieces of the part would be bounded badly.
 */
export function movesEvenly(rows: Float64Array, poseAt: number, lever: number): boolean {
  const by = poseAt + CELL_OF_POSES.motion;
  const arm = rows[by + MOTION.armSlideOff]! + rows[by + MOTION.armTurnOff]! * lever;
  const steer = rows[by + MOTION.steerSlideOff]! + rows[by + MOTION.steerTurnOff]! * lever;
  const off = rows[by + MOTION.armHalf]! * arm + rows[by + MOTION.steerHalf]! * steer;
  return off <= EVEN_SHARE * borderWay(rows, poseAt, lever);
}
