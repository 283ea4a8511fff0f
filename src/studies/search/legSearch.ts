import { boundCell, cellBound } from "../../gaps/cells/cellBound.ts";
import { CELL, CELL_ROW } from "../../gaps/cells/cells.ts";
import { GAP_ROW } from "../../gaps/partGap.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import type { SideModel } from "../../suspension/frontEnd.ts";
import { type InnerEndSpread, motionBoundTo } from "../../suspension/motionBound.ts";
import { Border, borderCell, steeredBorderTo } from "../../suspension/outOfReach.ts";
import { POSE, POSE_ROW, poseRowTo } from "../../suspension/poseRow.ts";
import { PoseStatus } from "../../suspension/poseStatus.ts";
import { INNER_ENDS_ROW, type Steering } from "../../suspension/steering.ts";
import { RATE_ROW, wheelRatesTo } from "../../suspension/wheelRates.ts";
import { Keeps, type KeptPoses } from "../limits/keptPoses.ts";
import { type LegPair, pairGapTo } from "../model/pairs.ts";
import type { Budget } from "../numeric/budget.ts";
import { MinHeap } from "../numeric/minHeap.ts";
import { toleranceAt } from "./deepTolerance.ts";
import { legAtBorder } from "./legAtBorder.ts";
import { legCellTo } from "./legCell.ts";
import { boundFan, type FanBound, fanBound } from "./legFan.ts";
import { legMotionTo, scaledMotionTo } from "./legMotion.ts";
import { Cut, LegNodes, NODE, NODE_ROW } from "./legNodes.ts";
import type { OtherWheel } from "./otherWheel.ts";
import type { PoseRange, PoseToStart } from "./worstGap.ts";

/** One side's leg pair with what moves it. */
export interface LegsToSearch {
  readonly pair: LegPair;
  readonly side: SideModel;
  /** Null = the other wheel takes no pose away. */
  readonly other: OtherWheel | null;
  /** 0 for the left side, 3 for the right: where that side's inner end stands in an inner-ends row. */
  readonly innerAt: 0 | 3;
  readonly steering: Steering;
  /** Poses that pass a limit are left out; none = the setup has no limit that any pose passes. */
  readonly limits?: KeptPoses;
}

/** The worst gap of one leg pair over a range of poses, mm. */
export interface WorstLegGap {
  /** The gap at the pose found, of one point of the legs: the pair's own gap there may be less by rounding. */
  readonly gap: number;
  /** Proven: no pose in the range is worse than this. */
  readonly bound: number;
  readonly armAngle: number;
  readonly steer: number;
  /** How many cells were looked at: what it cost. */
  readonly cells: number;
}

/** Share of the range below which a cell of poses of which nothing can be said is given up. */
const LEAST_SHARE = 1 / 4096;

/** …and where the border's own pose bounds the cell, the share of that at which rounding would take over. */
const FINEST_SHARE = 1e-8;

/** …and where a limit may be passed in a cell or kept, the share at which it is left: less than a micron of travel. */
const LIMIT_SHARE = 2 ** -12;

/** Steers looked at at each end of the arm's reach when cells were given up. */
const END_SAMPLES = 33;

/** Microseconds, about. */
const TWO_LOOKS_WORK = 20;

/** Nodes after which the search stops and reports the bound it has reached: under a second of work. */
const MOST_NODES = 60_000;

// Scratch: a search is not reentrant and calls back nobody.
const pose = new Float64Array(POSE_ROW);
const rates = new Float64Array(RATE_ROW);
const motion = new Float64Array(MOTION_ROW);
const ends = new Float64Array(INNER_ENDS_ROW);
const cell = new Float64Array(CELL_ROW);
const spread: InnerEndSpread = { speedMost: 0, velocityOff: 0 };
const scaled = new Float64Array(MOTION_ROW);
const found = cellBound();
const fan = fanBound();
const border = borderCell();
const gapRow = new Float64Array(GAP_ROW);

/** The search behind `worstLegGap`. */
export class LegSearch {
  private readonly nodes = new LegNodes();
  private readonly heap = new MinHeap();
  private best = Number.POSITIVE_INFINITY;
  private bestArm = 0;
  private bestSteer = 0;
  /** Least bound of cells settled at the border of reach, within the tolerance asked for. */
  private settled = Number.POSITIVE_INFINITY;
  /** Whether cells were given up there. */
  private atBorder = false;
  private looked = 0;
  private readonly radius: number;
  /** No gap is below this: the deepest place of the solid, less the legs' own radius. */
  private readonly floor: number;
  private readonly leastArm: number;
  private readonly leastSteer: number;

  constructor(
    private readonly legs: LegsToSearch,
    private readonly range: PoseRange,
    private readonly borderTolerance: number,
    start: PoseToStart | null,
  ) {
    const { pair } = legs;
    this.radius = pair.part.cells[CELL.radius]!;
    this.floor = -pair.ring.deepest - this.radius;
    this.leastArm = LEAST_SHARE * (range.armHigh - range.armLow);
    this.leastSteer = LEAST_SHARE * (range.steerHigh - range.steerLow);
    if (start !== null) this.sample(start.arm, start.steer);
    const legCount = pair.pivots === null ? 1 : pair.pivots.length / 3;
    for (let leg = 0; leg < legCount; leg++) {
      const node = this.nodes.claim();
      this.nodes.rows.set(
        [
          0.5 * (range.armLow + range.armHigh),
          0.5 * (range.armHigh - range.armLow),
          0.5 * (range.steerLow + range.steerHigh),
          0.5 * (range.steerHigh - range.steerLow),
          leg,
          0,
          1,
          Cut.Leg,
          legs.limits === undefined ? 1 : 0,
        ],
        node * NODE_ROW,
      );
      this.look(node);
    }
  }

  run(tolerance: number, budget: Budget): WorstLegGap | null {
    while (this.heap.size > 0 && this.looked < MOST_NODES) {
      if (Math.max(this.heap.leastKey(), this.floor) >= this.best - toleranceAt(this.best, tolerance)) break;
      if (budget.isSpent(TWO_LOOKS_WORK)) break;
      const node = this.heap.pop();
      const twin = this.nodes.halve(node);
      this.look(node);
      this.look(twin);
    }
    if (this.atBorder) this.sampleEnds();
    if (this.best === Number.POSITIVE_INFINITY) return null;
    return {
      gap: this.best,
      // Cells of which nothing is known leave only the depth that no gap can pass.
      bound: this.atBorder
        ? Math.min(this.best, this.floor)
        : Math.max(Math.min(this.best, this.heap.leastKey(), this.settled), this.floor),
      armAngle: this.bestArm,
      steer: this.bestSteer,
      cells: this.looked,
    };
  }

  /** Fills `ends` and, when the side can take it, `pose`. */
  private stands(side: SideModel, at: number, arm: number): boolean {
    return (
      poseRowTo(pose, 0, side.row, Math.cos(arm), Math.sin(arm), ends[at]!, ends[at + 1]!, ends[at + 2]!) ===
      PoseStatus.Ok
    );
  }

  /** Bounds a node and keeps it in the heap unless it is ruled out. */
  private look(node: number): void {
    this.looked++;
    const at = node * NODE_ROW;
    const { rows } = this.nodes;
    const arm = rows[at + NODE.arm]!;
    const armHalf = rows[at + NODE.armHalf]!;
    const steer = rows[at + NODE.steer]!;
    const steerHalf = rows[at + NODE.steerHalf]!;
    const near = rows[at + NODE.near]!;
    const far = rows[at + NODE.far]!;
    const { pair, side, other, steering, innerAt } = this.legs;
    const steers = steering.innerEndsTo(ends, steer) === PoseStatus.Ok;
    const otherCan = steers && (other === null || other.stands(arm, ends));
    const sideCan = steers && this.stands(side, innerAt, arm);
    let proven = false;
    if (sideCan) {
      const [inner, at3] = this.innerOf(rows[at + NODE.leg]!);
      legCellTo(cell, pose, pair.outerAt, inner, at3, near, far, this.radius);
      const v = [ends[innerAt + 6]!, ends[innerAt + 7]!, ends[innerAt + 8]!] as const;
      const cos = Math.cos(arm);
      const sin = Math.sin(arm);
      wheelRatesTo(rates, 0, side.row, pose, 0, cos, sin, ...v);
      proven =
        steering.innerEndSpreadTo(spread, steer, steerHalf) &&
        motionBoundTo(motion, side.row, pose, rates, cos, sin, armHalf, steerHalf, spread, v);
      if (proven) {
        const own = pair.pivots === null ? { velocity: v, spread } : null;
        legMotionTo(motion, motion, pose, inner[at3]!, inner[at3 + 1]!, inner[at3 + 2]!, own);
        scaledMotionTo(scaled, motion, far);
      }
      boundCell(found, pair.ring, pose, POSE.wheelCenter, cell, 0, proven ? scaled : null);
      if (proven) {
        const { ring, outerAt } = pair;
        boundFan(
          fan,
          ring,
          pose,
          POSE.wheelCenter,
          pose,
          outerAt,
          inner,
          at3,
          near,
          far,
          this.radius,
          motion,
        );
      }
      // Only a pose that both wheels can take counts as found; a bound over more poses than that still holds.
      const value = proven ? Math.min(found.value, fan.value) : found.value;
      const isLess = otherCan && value < this.best;
      if (isLess && (rows[at + NODE.kept] === 1 || this.legs.limits!.keepsAt(arm, steer))) {
        this.best = value;
        this.bestArm = arm;
        this.bestSteer = steer;
      }
    }
    if (proven) {
      this.sort(node, Math.max(found.bound, fan.bound, this.floor), otherCan, arm, armHalf, steer, steerHalf);
      return;
    }
    if (this.keepsIn(node) === Keeps.None) {
      this.nodes.drop(node);
      return;
    }
    if (this.lookAtBorder(node, arm, armHalf, steer, steerHalf, near, far)) return;
    if (armHalf <= this.leastArm && steerHalf <= this.leastSteer) {
      this.atBorder = true;
      this.nodes.drop(node);
      return;
    }
    this.keep(node, this.widerCut(armHalf, steerHalf), Number.NEGATIVE_INFINITY);
  }

  /** What becomes of a bounded node: dropped, settled at the border of reach, or kept to be halved. */
  private sort(
    node: number,
    bound: number,
    otherCan: boolean,
    arm: number,
    armHalf: number,
    steer: number,
    steerHalf: number,
  ): void {
    if (bound >= this.best) {
      this.nodes.drop(node);
      return;
    }
    const keeps = this.keepsIn(node);
    if (keeps === Keeps.None) {
      this.nodes.drop(node);
      return;
    }
    if (!otherCan || keeps !== Keeps.All) {
      const empty = !otherCan && this.isEmpty(arm, armHalf, steer, steerHalf);
      const fine = this.isFine(armHalf, steerHalf, otherCan ? LIMIT_SHARE : FINEST_SHARE);
      if (empty || fine || (!otherCan && bound >= this.best - toleranceAt(this.best, this.borderTolerance))) {
        if (!empty) this.settled = Math.min(this.settled, bound);
        this.nodes.drop(node);
        return;
      }
    }
    this.keep(node, cutOf(fan.bound > found.bound ? fan : found, bound), bound);
  }

  private keep(node: number, cut: number, bound: number): void {
    this.nodes.rows[node * NODE_ROW + NODE.cut] = cut;
    this.heap.push(bound, node);
  }

  private widerCut(armHalf: number, steerHalf: number): number {
    return armHalf * this.leastSteer > steerHalf * this.leastArm ? Cut.Arm : Cut.Steer;
  }

  private isFine(armHalf: number, steerHalf: number, share: number): boolean {
    return armHalf < this.leastArm * share && steerHalf < this.leastSteer * share;
  }

  /** What is proven of the limits over a node's cell of poses. */
  private keepsIn(node: number): Keeps {
    const at = node * NODE_ROW;
    const { rows } = this.nodes;
    if (rows[at + NODE.kept] === 1) return Keeps.All;
    const keeps = this.legs.limits!.look(
      rows[at + NODE.arm]!,
      rows[at + NODE.armHalf]!,
      rows[at + NODE.steer]!,
      rows[at + NODE.steerHalf]!,
    );
    if (keeps === Keeps.All) rows[at + NODE.kept] = 1;
    return keeps;
  }

  /** Where a leg's inner end stands: row and place in it. Reads `pose`. */
  private innerOf(leg: number): readonly [Float64Array, number] {
    const { pivots } = this.legs.pair;
    return pivots === null ? [pose, POSE.tieRodInner] : [pivots, 3 * leg];
  }

  /** Whether the other side is proven unable to take any pose of the cell. */
  private isEmpty(arm: number, armHalf: number, steer: number, steerHalf: number): boolean {
    return this.legs.other?.cannotStand(arm, armHalf, steer, steerHalf) ?? false;
  }

  /**
   * Deals with a cell that may hold the border of reach, as `worstGap` does.
   * @returns false when nothing could be said of it.
   */
  private lookAtBorder(
    node: number,
    arm: number,
    armHalf: number,
    steer: number,
    steerHalf: number,
    near: number,
    far: number,
  ): boolean {
    const { pair, side, innerAt, steering } = this.legs;
    const state = steeredBorderTo(border, side, steering, innerAt, arm, armHalf, steer, steerHalf);
    if (state === Border.Empty || this.isEmpty(arm, armHalf, steer, steerHalf)) {
      this.nodes.drop(node);
      return true;
    }
    if (state !== Border.Bounded) return false;
    const { pivots, outerAt, ring } = pair;
    const leg = this.nodes.rows[node * NODE_ROW + NODE.leg]!;
    const ends = pivots ?? border.inner;
    const endAt = pivots === null ? innerAt : 3 * leg;
    const inner = [ends[endAt]!, ends[endAt + 1]!, ends[endAt + 2]!] as const;
    const innerOff = pivots === null ? border.innerOff : 0;
    const bound = legAtBorder(fan, border, side, ring, arm, outerAt, inner, innerOff, near, far, this.radius);
    if (Math.max(bound, this.floor) >= this.best - toleranceAt(this.best, this.borderTolerance)) {
      if (bound < this.best) this.settled = Math.min(this.settled, bound);
      this.nodes.drop(node);
      return true;
    }
    if (this.isFine(armHalf, steerHalf, FINEST_SHARE)) return false;
    const cut = cutOf(fan, bound);
    // At the end of reach the arm's range counts by its root: cut evenly, cells were thousands of times too narrow in steer.
    const across = border.turn > 2 * border.steerTurn ? Cut.Arm : Cut.Steer;
    this.keep(node, cut === Cut.Leg ? cut : across, bound);
    return true;
  }

  /** Where nothing could be proven at an end of the arm's reach, at least looks at that end itself. */
  private sampleEnds(): void {
    const { armLow, armHigh, steerLow, steerHigh } = this.range;
    for (const arm of [armLow, armHigh])
      for (let i = 0; i < END_SAMPLES; i++)
        this.sample(arm, steerLow + ((steerHigh - steerLow) * i) / (END_SAMPLES - 1));
  }

  /** Takes the gap at one pose, if it is less, both wheels can stand there and every limit is kept. */
  private sample(arm: number, steer: number): void {
    const { pair, side, other, steering, innerAt, limits } = this.legs;
    if (steering.innerEndsTo(ends, steer) !== PoseStatus.Ok) return;
    if (other !== null && !other.stands(arm, ends)) return;
    if (!this.stands(side, innerAt, arm)) return;
    const gap = pairGapTo(gapRow, 0, pair, pose, 0, this.best);
    if (!(gap < this.best) || (limits !== undefined && !limits.keepsAt(arm, steer))) return;
    this.best = gap;
    this.bestArm = arm;
    this.bestSteer = steer;
  }
}

/**
 * What to halve: that which the better bound loses most by; where its shares do not explain half of what is lost
 * (the concavity of r comes from all three), that which moves the points most. Reads `fan`.
 */
function cutOf(
  better: Pick<FanBound, "value" | "partShare" | "armShare" | "steerShare">,
  bound: number,
): number {
  const { partShare, armShare, steerShare } = better;
  if (partShare + armShare + steerShare > 0.5 * (better.value - bound)) {
    return widest(partShare, armShare, steerShare);
  }
  return widest(fan.length, fan.armPath, fan.steerPath);
}

function widest(part: number, arm: number, steer: number): number {
  if (part >= arm && part >= steer) return Cut.Leg;
  return arm >= steer ? Cut.Arm : Cut.Steer;
}
