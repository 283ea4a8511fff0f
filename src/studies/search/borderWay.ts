import { MOTION } from "../../geometry/motionRow.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "./cellOfPoses.ts";
import type { PoseCells } from "./poseCells.ts";

/** Share of the wheel's way over a cell at the border of reach that the gap in its middle may be off by. */
export const COARSE_SHARE = 0.1;

/** Share of the wheel's way by which it may leave its speed at the middle, for what is measured to be cut into pieces. */
const EVEN_SHARE = 0.5;

/** mm. How far a point can be from where it is at the border's pose, seen from the wheel: slide and turn at a lever. */
export function borderWay(rows: Float64Array, poseAt: number, lever: number): number {
  return rows[poseAt + CELL_OF_POSES.slide]! + rows[poseAt + CELL_OF_POSES.turn]! * lever;
}

/**
 * Whether the motion proven over a cell of poses differs little from that at its middle, compared with what is known
 * of it without any speed: near the border of reach it does not, and pieces of what is measured would be bounded badly.
 * @param lever mm, of a point of it
 */
export function movesEvenly(poses: PoseCells, cell: number, lever: number): boolean {
  const known = poses.lookAtBorder(cell);
  if (!(known & Known.Bounded)) return !(known & Known.Empty);
  const { rows } = poses;
  const poseAt = cell * CELL_OF_POSES_ROW;
  const by = poseAt + CELL_OF_POSES.motion;
  const arm = rows[by + MOTION.armSlideOff]! + rows[by + MOTION.armTurnOff]! * lever;
  const steer = rows[by + MOTION.steerSlideOff]! + rows[by + MOTION.steerTurnOff]! * lever;
  const off = rows[by + MOTION.armHalf]! * arm + rows[by + MOTION.steerHalf]! * steer;
  return off <= EVEN_SHARE * borderWay(rows, poseAt, lever);
}
