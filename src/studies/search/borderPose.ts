import { POSE, POSE_ROW } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW } from "./cellOfPoses.ts";
import { Cut } from "./nodes.ts";
import type { PoseCells } from "./poseCells.ts";

/**
 * A pose amid those a cell at the border of reach may hold, and how far from there any of them can be. There the knuckle's
 * turn about the steering axis grows like a square root, all the rest evenly: so that turn may be taken in parts.
 */
export class BorderPose {
  /** Joints, knuckle frame, wheel and inner tie rod end; the tie rod itself need not fit. */
  readonly pose = new Float64Array(POSE_ROW);
  /** mm. How far the lower ball joint, the inner tie rod end can be from there. */
  slide = 0;
  innerOff = 0;
  /** rad. How far the wheel can be turned from there. */
  turn = 0;
  /** rad. Half the range of the arm. */
  armHalf = 0;
  /** rad. How far it can be turned about the steering axis, in all of the cell, and otherwise. */
  spin = 0;
  tilt = 0;
  private steerTurn = 0;
  private rows: Float64Array = new Float64Array(0);
  private at = 0;
  private side: Float64Array = new Float64Array(0);

  /** @param cell one that is `Bounded` */
  take({ rows, wheel }: PoseCells, cell: number): void {
    const at = cell * CELL_OF_POSES_ROW;
    this.rows = rows;
    this.at = at;
    this.side = wheel.side.row;
    this.slide = rows[at + CELL_OF_POSES.slide]!;
    this.innerOff = rows[at + CELL_OF_POSES.borderInnerOff]!;
    this.armHalf = rows[at + CELL_OF_POSES.armHalf]!;
    this.steerTurn = rows[at + CELL_OF_POSES.steerTurn]!;
    this.spin = rows[at + CELL_OF_POSES.spin]!;
    this.tilt = rows[at + CELL_OF_POSES.turn]! - this.spin;
    this.put(0, this.spin);
  }

  /** Takes those poses alone that are turned about the steering axis from the cell's by `middle` ± `half`, rad. */
  put(middle: number, half: number): void {
    const { at, pose, rows, side } = this;
    this.turn = half + this.tilt;
    const cos = Math.cos(middle);
    const sin = Math.sin(middle);
    for (let i = 0; i < 3; i++) {
      const joint = rows[at + CELL_OF_POSES.borderJoint + i]!;
      const ahead = rows[at + CELL_OF_POSES.borderKnuckle + i]!;
      const beside = rows[at + CELL_OF_POSES.borderKnuckle + 3 + i]!;
      const x = cos * ahead + sin * beside;
      const y = cos * beside - sin * ahead;
      const z = rows[at + CELL_OF_POSES.borderKnuckle + 6 + i]!;
      pose[POSE.lowerBallJoint + i] = joint;
      pose[POSE.upperBallJoint + i] = joint + side[SIDE.span]! * z;
      pose[POSE.tieRodOuter + i] =
        joint +
        side[SIDE.steeringArm]! * x +
        side[SIDE.steeringArm + 1]! * y +
        side[SIDE.steeringArm + 2]! * z;
      pose[POSE.tieRodInner + i] = rows[at + CELL_OF_POSES.borderInner + i]!;
      pose[POSE.knuckleX + i] = x;
      pose[POSE.knuckleY + i] = y;
      pose[POSE.knuckleZ + i] = z;
      pose[POSE.wheelCenter + i] =
        joint +
        side[SIDE.wheelCenter]! * x +
        side[SIDE.wheelCenter + 1]! * y +
        side[SIDE.wheelCenter + 2]! * z;
      pose[POSE.wheelAxis + i] = side[SIDE.pinCos]! * y - side[SIDE.pinSin]! * z;
    }
  }

  /** mm. From the lower ball joint to a point. */
  lever(point: ArrayLike<number>, at: number): number {
    let sq = 0;
    for (let i = 0; i < 3; i++) sq += (point[at + i]! - this.pose[POSE.lowerBallJoint + i]!) ** 2;
    return Math.sqrt(sq);
  }

  /** mm. How far a point at a lever can be from where it is at this pose, seen from the wheel. */
  way(lever: number): number {
    return this.slide + this.turn * lever;
  }

  /** mm. How much of that way comes from the turn about the steering axis. */
  spinWay(lever: number): number {
    return (this.turn - this.tilt) * lever;
  }

  /** The range that makes the cell's way long. @param own mm, what the point moves itself as the wheel is steered */
  cut(lever: number, own = 0): Cut {
    const bySteer = this.steerTurn * lever + own;
    return this.slide + (this.spin + this.tilt) * lever + own > 2 * bySteer ? Cut.Arm : Cut.Steer;
  }
}
