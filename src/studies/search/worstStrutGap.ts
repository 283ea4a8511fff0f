import { cellBound } from "../../gaps/cells/cellBound.ts";
import { CELL } from "../../gaps/cells/cells.ts";
import { DEPTH_SHARE, GAP_TOLERANCE, SOLID_TOLERANCE } from "../../gaps/cells/tolerances.ts";
import { GAP_ROW } from "../../gaps/partGap.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE, POSE_ROW } from "../../suspension/poseRow.ts";
import { SIDE } from "../../suspension/sideRow.ts";
import { pairGapTo, type StrutPair } from "../model/pairs.ts";
import { frameFromWheelTo } from "../model/strutFrame.ts";
import { Budget } from "../numeric/budget.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "./cellOfPoses.ts";
import { Cut, loosestCut, NODE, NODE_ROW } from "./nodes.ts";
import { PoseCells, type PoseRange, type WheelToMove } from "./poseCells.ts";
import { Search, type Tolerances } from "./search.ts";
import { boundStrutPiece, lookAtStrut } from "./strutBound.ts";
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

/** Microseconds, about: a bound; a gap at a pose. */
const BOUND_WORK = 3;
const GAP_WORK = 30;

/** Nodes looked at after which the search ends with the bound it has reached: about a second of work. */
const MOST_NODES = 400_000;

// Scratch: a search is not reentrant.
const found = cellBound();

/**
 * Worst gap between the ring and a strut over a continuous range of travel and steer, by best-first branch and bound over
 * cells of poses × pieces of the strut, each bounded by `boundStrutPiece`. At the border of reach no point of the ring and
 * none of the strut's line runs farther from where the border's pose has it than a proven path, and a signed distance
 * changes by no more than the two together: gap there less both paths bounds the cell.
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
  if (tolerances.below === undefined) tried.lookOver(search, take, budget, GAP_WORK);
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
  /** Number of the cell of poses whose pose and motion stand in `pose` and `motion`. */
  private moving = -1;

  constructor(
    poses: PoseCells,
    private readonly pair: StrutPair,
    tolerances: Tolerances,
  ) {
    super(poses, -pair.ring.deepest - pair.part.cells[CELL.radius]!, tolerances, MOST_NODES);
  }

  run(budget: Budget): void {
    const root = this.claimRoot();
    this.nodes.rows[root * NODE_ROW] = 0;
    this.nodes.rows[root * NODE_ROW + NODE.near] = 0;
    this.nodes.rows[root * NODE_ROW + NODE.far] = 1;
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
    const poses = this.nodes.rows[node * NODE_ROW]!;
    if (this.poses.known[poses]! & Known.Moves) this.lookAtPiece(node, poses);
    else if (this.poses.lookAtLimits(poses) & Known.Passed) this.nodes.drop(node);
    else this.lookAtBorder(node, poses);
  }

  /** A piece over a cell of poses whose motion is proven. */
  private lookAtPiece(node: number, poses: number): void {
    this.work += BOUND_WORK;
    const { rows } = this.poses;
    const at = poses * CELL_OF_POSES_ROW;
    if (poses !== this.moving) {
      this.moving = poses;
      for (let i = 0; i < POSE_ROW; i++) this.pose[i] = rows[at + CELL_OF_POSES.pose + i]!;
      for (let i = 0; i < MOTION_ROW; i++) this.motion[i] = rows[at + CELL_OF_POSES.motion + i]!;
      lookAtStrut(this.pair, this.pose, this.motion);
    }
    const near = this.nodes.rows[node * NODE_ROW + NODE.near]!;
    const far = this.nodes.rows[node * NODE_ROW + NODE.far]!;
    boundStrutPiece(found, this.pair, this.pose, this.motion, near, far);
    if (found.value < this.best && this.poses.isPose(poses)) {
      this.best = found.value;
      this.bestArm = rows[at]!;
      this.bestSteer = rows[at + CELL_OF_POSES.steer]!;
    }
    this.keep(node, Math.max(found.bound, this.floor), loosestCut(found));
  }

  /** All of the strut, from a pose amid the border of reach. */
  private lookAtBorder(node: number, cell: number): void {
    this.work += GAP_WORK;
    const { pair, poses, pose } = this;
    const at = cell * CELL_OF_POSES_ROW;
    const known = poses.lookAtBorder(cell);
    if (known & Known.Empty || poses.isOtherEmpty(cell)) {
      this.nodes.drop(node);
      return;
    }
    this.moving = -1;
    const arm = poses.rows[at]!;
    if (known & Known.Stands && this.place(arm, poses.rows, at + CELL_OF_POSES.wheel)) {
      const own = pairGapTo(this.row, 0, pair, pose, 0, this.best);
      if (own < this.best && poses.isPose(cell))
        this.offer(this.row, arm, poses.rows[at + CELL_OF_POSES.steer]!);
    }
    if (!(known & Known.Bounded && this.place(arm, poses.rows, at + CELL_OF_POSES.borderWheel))) {
      this.pushUnknown(node);
      return;
    }
    const path = this.borderPath(at) + this.slack();
    const gap = pairGapTo(this.row, 0, pair, pose, 0, this.best + path);
    const { rows } = poses;
    const byArm = rows[at + CELL_OF_POSES.turn]! > 2 * rows[at + CELL_OF_POSES.steerTurn]!;
    this.keepOnBorder(node, gap - path, byArm ? Cut.Arm : Cut.Steer);
  }

  protected cutPart(node: number): void {
    const twin = this.nodes.halve(node);
    this.look(node);
    this.look(twin);
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
}
