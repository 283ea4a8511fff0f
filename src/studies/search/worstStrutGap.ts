import { CELL } from "../../gaps/cells/cells.ts";
import { DEPTH_SHARE, GAP_TOLERANCE, SOLID_TOLERANCE } from "../../gaps/cells/tolerances.ts";
import { GAP_ROW } from "../../gaps/partGap.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE, POSE_ROW } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { pairGapTo, type StrutPair } from "../model/pairs.ts";
import { bodyPath, strutPath } from "../model/strut.ts";
import { frameFromWheelTo } from "../model/strutFrame.ts";
import { Budget } from "../numeric/budget.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "./cellOfPoses.ts";
import { Cut, NODE_ROW } from "./nodes.ts";
import { PoseCells, type PoseRange, type WheelToMove } from "./poseCells.ts";
import { Search, type Tolerances } from "./search.ts";
import { boundStrut } from "./strutBound.ts";
import { type PoseToStart, TriedPose } from "./triedPose.ts";
import { requireSearchable } from "./worstGap.ts";

export interface StrutToSearch extends WheelToMove {
  readonly pair: StrutPair;
}

/** The worst gap of a strut over a range of poses: the pose found, and a bound that no pose of the range is below. mm. */
export interface WorstStrutGap {
  readonly gap: number;
  readonly bound: number;
  readonly armAngle: number;
  readonly steer: number;
}

/** Microseconds, about: a cell, a gap at a pose. */
const LOOK_WORK = 50;

/** Cells of poses looked at after which the search ends with the bound it has reached: a few seconds of work. */
const MOST_CELLS = 50_000;

/**
 * Worst gap between the ring and a strut over a continuous range of travel and steer, by best-first branch and bound
 * over cells of poses. Within a cell no point of the ring and no point of the strut's line runs farther from where the
 * middle pose has it than a proven path, and a signed distance changes by no more than the two together: gap at the
 * middle less both paths bounds the cell. At the border of reach the ring's path is that of `borderCellTo`.
 * @param start a pose of the range that keeps all limits.
 * @param budget once it is spent the search ends with what it has reached.
 * @returns null when no pose of the range is in reach, or none was found before the budget was spent.
 * @throws RangeError as `requireSearchable`
 */
export function worstStrutGap(
  strut: StrutToSearch,
  range: PoseRange,
  tolerances: Tolerances,
  start: PoseToStart | null = null,
  budget: Budget = Budget.endless(),
): WorstStrutGap | null {
  requireSearchable("worstStrutGap", range, tolerances);
  const search = new StrutSearch(PoseCells.over(strut, range), strut.pair, tolerances);
  const tried = new TriedPose(strut, range);
  const take = (arm: number, steer: number) => search.take(tried, arm, steer);
  if (start !== null) tried.look(take, start.arm, start.steer);
  tried.lookOver(search, take, budget, LOOK_WORK);
  search.run(budget);
  if (search.best === Number.POSITIVE_INFINITY) return null;
  return {
    gap: search.best,
    bound: search.bound(),
    armAngle: search.bestArm,
    steer: search.bestSteer,
  };
}

class StrutSearch extends Search {
  private readonly pose = new Float64Array(POSE_ROW);
  private readonly motion = new Float64Array(MOTION_ROW);
  private readonly joint = new Float64Array(3);
  private readonly row = new Float64Array(GAP_ROW);

  constructor(
    poses: PoseCells,
    private readonly pair: StrutPair,
    tolerances: Tolerances,
  ) {
    super(poses, -pair.ring.deepest - pair.part.cells[CELL.radius]!, tolerances, MOST_CELLS);
  }

  run(budget: Budget): void {
    const root = this.claimRoot();
    this.nodes.rows[root * NODE_ROW] = 0;
    this.look(root);
    this.goOn(budget);
  }

  /** Takes the gap at a pose that both wheels stand at, if it is less and every limit is kept. */
  take(tried: TriedPose, arm: number, steer: number): void {
    const gap = pairGapTo(this.row, 0, this.pair, tried.row, 0, this.best);
    if (gap < this.best && tried.keeps(arm, steer)) this.offer(this.row, arm, steer);
  }

  /** mm. The gap at a pose is itself searched to a tolerance. */
  private slack(): number {
    const floor = Math.max(this.best, this.floor);
    return floor < 0 ? SOLID_TOLERANCE - DEPTH_SHARE * floor : GAP_TOLERANCE;
  }

  protected look(node: number): void {
    this.cells++;
    this.work += LOOK_WORK;
    const { pair, poses, pose } = this;
    const cell = this.nodes.rows[node * NODE_ROW]!;
    const at = cell * CELL_OF_POSES_ROW;
    const known = poses.lookAtLimits(cell);
    if (known & Known.Passed) {
      this.nodes.drop(node);
      return;
    }
    const arm = poses.rows[at]!;
    const moves = (known & Known.Moves) !== 0;
    let path = Number.POSITIVE_INFINITY;
    let first = Number.NEGATIVE_INFINITY;
    let wheel: number = CELL_OF_POSES.wheel;
    if (moves) {
      this.motion.set(poses.rows.subarray(at + CELL_OF_POSES.motion, at + CELL_OF_POSES.motion + MOTION_ROW));
      if (this.place(arm, poses.rows, at + CELL_OF_POSES.wheel)) {
        first = boundStrut(pair, pose, this.motion, this.best);
        if (first >= this.best) {
          this.nodes.drop(node);
          return;
        }
        path =
          bodyPath(this.motion, pair.ring.ballRadius, 1, 1) + strutPath(pair.strut, this.motion, pose, 0);
      }
    } else {
      const border = poses.lookAtBorder(cell);
      if (border & Known.Empty || poses.isOtherEmpty(cell)) {
        this.nodes.drop(node);
        return;
      }
      if (border & Known.Bounded && this.place(arm, poses.rows, at + CELL_OF_POSES.borderWheel)) {
        wheel = CELL_OF_POSES.borderWheel;
        path = this.borderPath(at);
      }
    }
    if (!(path < Number.POSITIVE_INFINITY)) {
      this.pushUnknown(node);
      return;
    }
    const gap = pairGapTo(this.row, 0, pair, pose, 0, this.best + path + this.slack());
    const bound = Math.max(gap - path - this.slack(), first);
    const steer = poses.rows[at + CELL_OF_POSES.steer]!;
    if (wheel === CELL_OF_POSES.wheel) {
      if (gap < this.best && poses.isPose(cell)) this.offer(this.row, arm, steer);
    } else if (known & Known.Stands && this.place(arm, poses.rows, at + CELL_OF_POSES.wheel)) {
      const own = pairGapTo(this.row, 0, pair, pose, 0, this.best);
      if (own < this.best && poses.isPose(cell)) this.offer(this.row, arm, steer);
    }
    if (moves) this.keep(node, bound, this.cutOf(cell));
    else this.keepOnBorder(node, bound, this.cutOf(cell));
  }

  /** All of the strut is looked at at once. */
  protected cutPart(node: number): void {
    this.look(node);
  }

  /** Fills `pose` as far as the strut and the ring ask of it. */
  private place(arm: number, wheel: Float64Array, wheelAt: number): boolean {
    const { row } = this.poses.wheel.side;
    const [cos, sin] = [Math.cos(arm), Math.sin(arm)];
    for (let i = 0; i < 3; i++) {
      this.joint[i] =
        row[SIDE.lowerFoot + i]! + cos * row[SIDE.lowerRadial + i]! + sin * row[SIDE.lowerQuarter + i]!;
      this.pose[POSE.lowerBallJoint + i] = this.joint[i]!;
      this.pose[POSE.wheelCenter + i] = wheel[wheelAt + i]!;
      this.pose[POSE.wheelAxis + i] = wheel[wheelAt + 3 + i]!;
    }
    if (this.pair.strut.lower.on === "lowerArm") return true;
    return frameFromWheelTo(this.pose, row, this.joint, 0, wheel, wheelAt);
  }

  /** Ring and strut about the border's pose: whatever rides on the knuckle moves by slide + turn × its lever. */
  private borderPath(at: number): number {
    const { rows } = this.poses;
    const { pair } = this;
    const slide = rows[at + CELL_OF_POSES.slide]!;
    const turn = rows[at + CELL_OF_POSES.turn]!;
    let centerSq = 0;
    for (let i = 0; i < 3; i++)
      centerSq +=
        (rows[at + CELL_OF_POSES.borderWheel + i]! - rows[at + CELL_OF_POSES.borderJoint + i]!) ** 2;
    const ring = slide + turn * (Math.sqrt(centerSq) + pair.ring.ballRadius);
    const { lower } = pair.strut;
    if (lower.on === "lowerArm") return ring + lower.radius * rows[at + CELL_OF_POSES.armHalf]!;
    return ring + slide + turn * Math.hypot(...lower.point);
  }

  /** The range that lets the gap differ more within the cell; of a cell of which nothing is known, the wider one. */
  private cutOf(cell: number): Cut {
    const { rows, known } = this.poses;
    const at = cell * CELL_OF_POSES_ROW;
    const armHalf = rows[at + CELL_OF_POSES.armHalf]!;
    if (!(known[cell]! & Known.Moves)) {
      if (!(known[cell]! & Known.Bounded)) return this.widerCut(cell);
      return rows[at + CELL_OF_POSES.turn]! > 2 * rows[at + CELL_OF_POSES.steerTurn]! ? Cut.Arm : Cut.Steer;
    }
    const { pair } = this;
    const { lower } = pair.strut;
    const radius = pair.ring.ballRadius;
    const byArm =
      bodyPath(this.motion, radius, 1, 0) + (lower.on === "lowerArm" ? lower.radius * armHalf : 0);
    return byArm >= bodyPath(this.motion, radius, 0, 1) ? Cut.Arm : Cut.Steer;
  }
}
