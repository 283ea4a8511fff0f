import { boundCell, cellBound } from "../../gaps/cells/cellBound.ts";
import { CELL, CELL_ROW } from "../../gaps/cells/cells.ts";
import { GAP_ROW } from "../../gaps/partGap.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import { borderCell } from "../../suspension/outOfReach.ts";
import { POSE, POSE_ROW } from "../../suspension/poseRow.ts";
import { type LegPair, pairGapTo } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "./cellOfPoses.ts";
import { legAtBorder } from "./legAtBorder.ts";
import { legCellTo } from "./legCell.ts";
import { boundFan, type FanBound, fanBound } from "./legFan.ts";
import { legMotionTo, scaledMotionTo } from "./legMotion.ts";
import { Cut, loosestCut, NODE, NODE_ROW } from "./nodes.ts";
import type { PoseCells } from "./poseCells.ts";
import { Search, type Tolerances } from "./search.ts";
import type { TriedPose } from "./triedPose.ts";

/** Microseconds, about. */
const LOOK_WORK = 5;

/** Nodes after which the search stops and reports the bound it has reached: under a second of work. */
const MOST_NODES = 60_000;

// Scratch: a search is not reentrant and calls back nobody.
const pose = new Float64Array(POSE_ROW);
const motion = new Float64Array(MOTION_ROW);
const ofInner = new Float64Array(MOTION_ROW);
const scaled = new Float64Array(MOTION_ROW);
const cell = new Float64Array(CELL_ROW);
const found = cellBound();
const fan = fanBound();
const border = borderCell();
const gapRow = new Float64Array(GAP_ROW);

/** The search behind `worstLegGap`: each node is a cell of poses × a piece of one leg. */
export class LegSearch extends Search {
  private readonly radius: number;
  /** Number of the cell of poses whose pose and motion stand in `pose` and `motion`. */
  private moving = -1;

  constructor(
    poses: PoseCells,
    private readonly pair: LegPair,
    tolerances: Tolerances,
  ) {
    const radius = pair.part.cells[CELL.radius]!;
    super(poses, -pair.ring.deepest - radius, tolerances, MOST_NODES);
    this.radius = radius;
  }

  run(budget: Budget): void {
    const { pivots } = this.pair;
    const legCount = pivots === null ? 1 : pivots.length / 3;
    for (let leg = 0; leg < legCount; leg++) {
      const node = this.claimRoot();
      const at = node * NODE_ROW;
      this.nodes.rows[at] = 0;
      this.nodes.rows[at + NODE.leg] = leg;
      this.nodes.rows[at + NODE.near] = 0;
      this.nodes.rows[at + NODE.far] = 1;
      this.look(node);
    }
    this.goOn(budget);
  }

  /** Takes the gap at a pose that both wheels stand at, if it is less and every limit is kept. */
  take(tried: TriedPose, arm: number, steer: number): void {
    const gap = pairGapTo(gapRow, 0, this.pair, tried.row, 0, this.best);
    if (gap < this.best && tried.keeps(arm, steer)) this.offer(gapRow, arm, steer);
  }

  protected look(node: number): void {
    this.cells++;
    this.work += LOOK_WORK;
    const poses = this.nodes.rows[node * NODE_ROW]!;
    const known = this.poses.known[poses]!;
    if (known & Known.Stands) this.lookAtMiddle(node, poses);
    if (known & Known.Moves) {
      const isFan = fan.bound > found.bound;
      const bound = Math.max(isFan ? fan.bound : found.bound, this.floor);
      this.keep(node, bound, cutOf(isFan ? fan : found, bound));
    } else if (this.poses.lookAtLimits(poses) & Known.Passed) this.nodes.drop(node);
    else this.lookAtBorder(node, poses);
  }

  /** The piece at the middle pose and, where the motion is proven, over the cell: fills `found` and then `fan`. */
  private lookAtMiddle(node: number, poses: number): void {
    const { rows } = this.nodes;
    const at = node * NODE_ROW;
    const near = rows[at + NODE.near]!;
    const far = rows[at + NODE.far]!;
    const { pivots, outerAt, ring } = this.pair;
    if (poses !== this.moving) this.moveTo(poses);
    const inner = pivots ?? pose;
    const innerAt = pivots === null ? POSE.tieRodInner : 3 * rows[at + NODE.leg]!;
    legCellTo(cell, pose, outerAt, inner, innerAt, near, far, this.radius);
    const moves = (this.poses.known[poses]! & Known.Moves) !== 0;
    if (moves) {
      const own = pivots === null ? this.innerMotion(poses) : null;
      legMotionTo(ofInner, motion, pose, inner[innerAt]!, inner[innerAt + 1]!, inner[innerAt + 2]!, own);
      scaledMotionTo(scaled, ofInner, far);
    }
    const wheel = POSE.wheelCenter;
    boundCell(found, ring, pose, wheel, cell, 0, moves ? scaled : null);
    if (moves)
      boundFan(fan, ring, pose, wheel, pose, outerAt, inner, innerAt, near, far, this.radius, ofInner);
    const value = moves ? Math.min(found.value, fan.value) : found.value;
    // Only a pose that both wheels can take counts as found; a bound over more poses than that still holds.
    if (!(value < this.best && this.poses.isPose(poses))) return;
    this.best = value;
    this.bestArm = this.poses.rows[poses * CELL_OF_POSES_ROW]!;
    this.bestSteer = this.poses.rows[poses * CELL_OF_POSES_ROW + CELL_OF_POSES.steer]!;
  }

  private moveTo(poses: number): void {
    this.moving = poses;
    const { rows } = this.poses;
    const at = poses * CELL_OF_POSES_ROW;
    for (let i = 0; i < POSE_ROW; i++) pose[i] = rows[at + CELL_OF_POSES.pose + i]!;
    for (let i = 0; i < MOTION_ROW; i++) motion[i] = rows[at + CELL_OF_POSES.motion + i]!;
  }

  /** How the inner tie rod end moves over a cell of poses. */
  private innerMotion(poses: number) {
    const { rows } = this.poses;
    const at = poses * CELL_OF_POSES_ROW;
    const v = at + CELL_OF_POSES.innerVelocity;
    return {
      velocity: [rows[v]!, rows[v + 1]!, rows[v + 2]!] as const,
      spread: {
        speedMost: rows[at + CELL_OF_POSES.innerSpeedMost]!,
        velocityOff: rows[at + CELL_OF_POSES.innerVelocityOff]!,
      },
    };
  }

  private lookAtBorder(node: number, poses: number): void {
    const known = this.poses.lookAtBorder(poses);
    if (known & Known.Empty || this.poses.isOtherEmpty(poses)) {
      this.nodes.drop(node);
      return;
    }
    if (!(known & Known.Bounded)) {
      this.pushUnknown(node);
      return;
    }
    const { pivots, outerAt, ring } = this.pair;
    const { rows } = this.nodes;
    const at = node * NODE_ROW;
    this.poses.borderTo(border, poses);
    const { innerAt: sideAt, side } = this.poses.wheel;
    const ends = pivots ?? border.inner;
    const endAt = pivots === null ? sideAt : 3 * rows[at + NODE.leg]!;
    const inner = [ends[endAt]!, ends[endAt + 1]!, ends[endAt + 2]!] as const;
    const innerOff = pivots === null ? border.innerOff : 0;
    const arm = this.poses.rows[poses * CELL_OF_POSES_ROW]!;
    const near = rows[at + NODE.near]!;
    const far = rows[at + NODE.far]!;
    const bound = legAtBorder(fan, border, side, ring, arm, outerAt, inner, innerOff, near, far, this.radius);
    const cut = cutOf(fan, bound);
    // At the end of reach the arm's range counts by its root: cut evenly, cells were thousands of times too narrow in steer.
    const across = border.turn > 2 * border.steerTurn ? Cut.Arm : Cut.Steer;
    this.keepOnBorder(node, bound, cut === Cut.Part ? cut : across);
  }

  protected cutPart(node: number): void {
    const twin = this.nodes.halve(node);
    this.look(node);
    this.look(twin);
  }
}

/**
 * What to halve: that which the better bound loses most by; where its shares do not explain half of what is lost
 * (the concavity of r comes from all three), that which moves the points most. Reads `fan`.
 */
function cutOf(
  better: Pick<FanBound, "value" | "partShare" | "armShare" | "steerShare">,
  bound: number,
): Cut {
  const { partShare, armShare, steerShare } = better;
  if (partShare + armShare + steerShare > 0.5 * (better.value - bound)) {
    return loosestCut(better);
  }
  return loosestCut({ partShare: fan.length, armShare: fan.armPath, steerShare: fan.steerPath });
}
