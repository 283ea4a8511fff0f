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
import { MinHeap } from "../numeric/minHeap.ts";
import { toleranceAt } from "./deepTolerance.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known, PoseCells, type WheelToMove } from "./poseCells.ts";
import { boundStrut } from "./strutBound.ts";
import { type PoseRange, type PoseToStart, requireSearchable } from "./worstGap.ts";

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

/** Share of the range below which a cell of which nothing can be said is given up. */
const LEAST_SHARE = 1 / 4096;

/** Share of the range below which rounding would take over. */
const FINEST_SHARE = 1e-9;

/** …and at which a cell is left where a limit may be passed in it or kept. */
const LIMIT_SHARE = 2 ** -24;

/** Heights and steers looked at before the search. */
const FIRST_ARMS = 9;
const FIRST_STEERS = 13;

/** Rounds of looking closer about the worst of them. */
const FIRST_ROUNDS = 24;

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
  tolerance: number,
  borderTolerance = tolerance,
  start: PoseToStart | null = null,
  budget: Budget = Budget.endless(),
): WorstStrutGap | null {
  requireSearchable("worstStrutGap", range, tolerance, borderTolerance);
  return new StrutSearch(strut, range, borderTolerance, budget).run(tolerance, start);
}

class StrutSearch {
  private readonly poses: PoseCells;
  private readonly heap = new MinHeap();
  private readonly floor: number;
  private readonly armRange: number;
  private readonly steerRange: number;
  private readonly pose = new Float64Array(POSE_ROW);
  private readonly motion = new Float64Array(MOTION_ROW);
  private readonly joint = new Float64Array(3);
  private readonly row = new Float64Array(GAP_ROW);
  private best = Number.POSITIVE_INFINITY;
  private bestArm = 0;
  private bestSteer = 0;
  private settled = Number.POSITIVE_INFINITY;
  private gaveUp = false;

  constructor(
    private readonly strut: StrutToSearch,
    private readonly range: PoseRange,
    private readonly borderTolerance: number,
    private readonly budget: Budget,
  ) {
    this.poses = new PoseCells(strut);
    this.floor = -strut.pair.ring.deepest - strut.pair.part.cells[CELL.radius]!;
    this.armRange = range.armHigh - range.armLow;
    this.steerRange = range.steerHigh - range.steerLow;
  }

  run(tolerance: number, start: PoseToStart | null): WorstStrutGap | null {
    const { armLow, armHigh, steerLow, steerHigh } = this.range;
    this.lookOver(start);
    const middle = [0.5 * (armLow + armHigh), 0.5 * (steerLow + steerHigh)] as const;
    const root = this.poses.add(middle[0], 0.5 * this.armRange, middle[1], 0.5 * this.steerRange);
    this.look(root, Number.NEGATIVE_INFINITY);
    while (
      this.heap.size > 0 &&
      this.poses.count < MOST_CELLS &&
      this.least() < this.best - toleranceAt(this.best, tolerance) + this.slack()
    ) {
      if (this.budget.isSpent(2 * LOOK_WORK)) break;
      const bound = this.heap.leastKey();
      const cell = this.heap.pop();
      const first = this.poses.half(cell, this.cutOf(cell));
      this.look(first, bound);
      this.look(first + 1, bound);
    }
    if (this.best === Number.POSITIVE_INFINITY) return null;
    const reached = this.gaveUp ? this.floor : Math.min(this.least(), this.settled);
    return {
      gap: this.best,
      bound: Math.min(this.best, Math.max(reached, this.floor)) - this.slack(),
      armAngle: this.bestArm,
      steer: this.bestSteer,
    };
  }

  /** mm. The gap at a pose is itself searched to a tolerance. */
  private slack(): number {
    return this.best < 0 ? SOLID_TOLERANCE - DEPTH_SHARE * this.best : GAP_TOLERANCE;
  }

  private least(): number {
    return Math.max(this.heap.leastKey(), this.floor);
  }

  /** Poses of a grid with its ends: a good gap early keeps the search small. */
  private lookOver(start: PoseToStart | null): void {
    const { armLow, armHigh, steerLow, steerHigh } = this.range;
    const one = new PoseCells(this.strut);
    const lookAt = (arm: number, steer: number) => {
      const cell = one.add(clamped(arm, armLow, armHigh), 0, clamped(steer, steerLow, steerHigh), 0);
      if ((one.known[cell]! & Known.Stands) === 0) return;
      const at = cell * CELL_OF_POSES_ROW;
      if (!this.place(one.rows[at]!, one.rows, at + CELL_OF_POSES.wheel)) return;
      const gap = pairGapTo(this.row, 0, this.strut.pair, this.pose, 0, this.best);
      this.offer(gap, one.known[cell]!, one.rows[at]!, one.rows[at + CELL_OF_POSES.steer]!);
    };
    if (start !== null) lookAt(start.arm, start.steer);
    let arm = this.armRange / (FIRST_ARMS - 1);
    let steer = this.steerRange / (FIRST_STEERS - 1);
    for (let i = 0; i < FIRST_ARMS; i++)
      for (let j = 0; j < FIRST_STEERS && !this.budget.isSpent(LOOK_WORK); j++)
        lookAt(armLow + i * arm, steerLow + j * steer);
    for (let round = 0; round < FIRST_ROUNDS; round++) {
      const { best: before, bestArm, bestSteer } = this;
      if (this.budget.isSpent(4 * LOOK_WORK)) return;
      for (const way of [-1, 1]) {
        lookAt(bestArm + way * arm, bestSteer);
        lookAt(bestArm, bestSteer + way * steer);
      }
      if (this.best < before) continue;
      arm *= 0.5;
      steer *= 0.5;
    }
  }

  private offer(gap: number, known: number, arm: number, steer: number): void {
    if (!(gap < this.best) || !(known & Known.Stands) || !(known & Known.OtherStands)) return;
    if (!(known & Known.Kept) && !this.strut.limits?.keepsAt(arm, steer)) return;
    this.best = gap;
    this.bestArm = arm;
    this.bestSteer = steer;
  }

  /** Bounds a cell and keeps it unless it is ruled out. @param parent no pose of the cell has less, known before. */
  private look(cell: number, parent: number): void {
    const { poses, strut, pose } = this;
    const { pair } = strut;
    const at = cell * CELL_OF_POSES_ROW;
    const known = poses.lookAtLimits(cell);
    if (known & Known.Passed) return;
    const arm = poses.rows[at]!;
    const moves = (known & Known.Moves) !== 0;
    let path = Number.POSITIVE_INFINITY;
    let first = Number.NEGATIVE_INFINITY;
    let wheel: number = CELL_OF_POSES.wheel;
    let border = 0;
    if (moves) {
      this.motion.set(poses.rows.subarray(at + CELL_OF_POSES.motion, at + CELL_OF_POSES.motion + MOTION_ROW));
      if (this.place(arm, poses.rows, at + CELL_OF_POSES.wheel)) {
        first = boundStrut(pair, pose, this.motion, this.best);
        if (first >= this.best) return;
        path =
          bodyPath(this.motion, pair.ring.ballRadius, 1, 1) + strutPath(pair.strut, this.motion, pose, 0);
      }
    } else {
      border = poses.lookAtBorder(cell);
      if (border & Known.Empty) return;
      if (border & Known.Bounded && this.place(arm, poses.rows, at + CELL_OF_POSES.borderWheel)) {
        wheel = CELL_OF_POSES.borderWheel;
        path = this.borderPath(at);
      }
    }
    if (poses.isOtherEmpty(cell)) return;
    if (!(path < Number.POSITIVE_INFINITY)) {
      if (this.isSmall(at, LEAST_SHARE)) this.gaveUp = true;
      else this.heap.push(parent, cell);
      return;
    }
    const gap = pairGapTo(this.row, 0, pair, pose, 0, this.best + path + this.slack());
    const bound = Math.max(gap - path, first, parent);
    const steer = poses.rows[at + CELL_OF_POSES.steer]!;
    if (wheel === CELL_OF_POSES.wheel) this.offer(gap, known, arm, steer);
    else if (known & Known.Stands && this.place(arm, poses.rows, at + CELL_OF_POSES.wheel))
      this.offer(pairGapTo(this.row, 0, pair, pose, 0, this.best), known, arm, steer);
    if (bound >= this.best) return;
    const stands = moves && (known & Known.OtherStands) !== 0;
    const certain = stands && (known & Known.Kept) !== 0;
    const isNear = Math.max(bound, this.floor) >= this.best - toleranceAt(this.best, this.borderTolerance);
    if (certain && !this.isSmall(at, FINEST_SHARE)) this.heap.push(bound, cell);
    else if (isNear || this.isSmall(at, stands && !certain ? LIMIT_SHARE : FINEST_SHARE))
      this.settled = Math.min(this.settled, bound);
    else this.heap.push(bound, cell);
  }

  /** Fills `pose` as far as the strut and the ring ask of it. */
  private place(arm: number, wheel: Float64Array, wheelAt: number): boolean {
    const { row } = this.strut.side;
    const [cos, sin] = [Math.cos(arm), Math.sin(arm)];
    for (let i = 0; i < 3; i++) {
      this.joint[i] =
        row[SIDE.lowerFoot + i]! + cos * row[SIDE.lowerRadial + i]! + sin * row[SIDE.lowerQuarter + i]!;
      this.pose[POSE.lowerBallJoint + i] = this.joint[i]!;
      this.pose[POSE.wheelCenter + i] = wheel[wheelAt + i]!;
      this.pose[POSE.wheelAxis + i] = wheel[wheelAt + 3 + i]!;
    }
    if (this.strut.pair.strut.lower.on === "lowerArm") return true;
    return frameFromWheelTo(this.pose, row, this.joint, 0, wheel, wheelAt);
  }

  /** Ring and strut about the border's pose: whatever rides on the knuckle moves by slide + turn × its lever. */
  private borderPath(at: number): number {
    const { rows } = this.poses;
    const { pair } = this.strut;
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

  private isSmall(at: number, share: number): boolean {
    const { rows } = this.poses;
    return (
      rows[at + CELL_OF_POSES.armHalf]! <= share * this.armRange &&
      rows[at + CELL_OF_POSES.steerHalf]! <= share * this.steerRange
    );
  }

  /** The range that lets the gap differ more within the cell; of a cell of which nothing is known, the wider one. */
  private cutOf(cell: number): "arm" | "steer" {
    const { rows, known } = this.poses;
    const at = cell * CELL_OF_POSES_ROW;
    const armHalf = rows[at + CELL_OF_POSES.armHalf]!;
    const steerHalf = rows[at + CELL_OF_POSES.steerHalf]!;
    if (known[cell]! & Known.Bounded) {
      const turn = rows[at + CELL_OF_POSES.turn]!;
      return turn > 2 * rows[at + CELL_OF_POSES.steerTurn]! ? "arm" : "steer";
    }
    if (!(known[cell]! & Known.Moves))
      return armHalf * this.steerRange > steerHalf * this.armRange ? "arm" : "steer";
    this.motion.set(rows.subarray(at + CELL_OF_POSES.motion, at + CELL_OF_POSES.motion + MOTION_ROW));
    const { pair } = this.strut;
    const { lower } = pair.strut;
    const radius = pair.ring.ballRadius;
    const byArm =
      bodyPath(this.motion, radius, 1, 0) + (lower.on === "lowerArm" ? lower.radius * armHalf : 0);
    return byArm >= bodyPath(this.motion, radius, 0, 1) ? "arm" : "steer";
  }
}

function clamped(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
