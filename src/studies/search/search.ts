import type { Budget } from "../numeric/budget.ts";
import { BorderPose } from "./borderPose.ts";
import { borderWay, COARSE_SHARE } from "./borderWay.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "./cellOfPoses.ts";
import { coarseAt, toleranceAt } from "./deepTolerance.ts";
import { Frontier } from "./frontier.ts";
import { Cut, NODE, NODE_ROW } from "./nodes.ts";
import type { PoseCells } from "./poseCells.ts";
import type { Said, Subject } from "./subject.ts";
import type { TriedPose } from "./triedPose.ts";

/** Share of the range below which a cell of poses of which nothing can be said is given up. */
const LEAST_SHARE = 2 ** -12;

/** …at which one is left where a limit may be passed in it or kept: less than a micron of travel… */
const LIMIT_SHARE = 2 ** -24;

/** …and at which rounding would take over, where a pose amid the border of reach bounds it. */
const FINEST_SHARE = 2 ** -39;

/** How often a cell's turn about the steering axis is halved at the border of reach. */
const MOST_TURNS = 12;

/** Nodes after which the tolerance asked for will do: some tens of milliseconds. */
const FINE_NODES = 20_000;

/** How far a search goes down, mm. */
export interface Tolerances {
  /** No node is left below the best gap by more than this… */
  readonly asked: number;
  /** …and by this, asked or less, as long as few nodes are looked at. */
  readonly finer: number;
  /** Where the border of reach decides: motion there grows like a square root. */
  readonly border: number;
  /** A gap of this or more is to be proven so, to the finer tolerance, however many nodes that takes. */
  readonly allowance?: number;
  /** Only gaps below this are looked for; none = all. Where there is none, the search ends once that is proven. */
  readonly below?: number;
}

/**
 * The best-first search: each node is a cell of poses × all or a piece of what is measured. The subject says what a node's
 * bound is and how its piece is cut; what becomes of a bounded node is the same for all.
 */
export class Search extends Frontier {
  /** What was done since the budget was asked last, in about microseconds. */
  private work = 0;
  private readonly armRange: number;
  private readonly steerRange: number;
  private readonly said: Said = { value: 0, bound: 0, cut: Cut.Part };
  private readonly border = new BorderPose();
  private readonly parts = new TurnParts(MOST_TURNS + 1);
  private readonly lookAt = (node: number): void => this.look(node);

  /** @param poses its cell 0 is the range to search. */
  constructor(
    private readonly poses: PoseCells,
    private readonly subject: Subject,
    private readonly tolerances: Tolerances,
  ) {
    super(subject.floor, tolerances.below);
    this.armRange = 2 * poses.rows[CELL_OF_POSES.armHalf]!;
    this.steerRange = 2 * poses.rows[CELL_OF_POSES.steerHalf]!;
  }

  /** Takes the gap at a pose that both wheels stand at, if it is less and every limit is kept. */
  take(tried: TriedPose, arm: number, steer: number, coarse: number): void {
    const gap = this.subject.gap(tried.row, 0, this.best, coarse);
    if (gap < this.best && tried.keeps(arm, steer)) this.offer(gap, arm, steer);
  }

  /**
   * Searches all of the subject over the whole range, until the tolerance is reached.
   * @returns false when the budget ended it.
   */
  run(budget: Budget): boolean {
    const root = this.claimRoot();
    this.nodes.rows[root * NODE_ROW] = 0;
    this.subject.begin(this.nodes, root);
    this.look(root);
    while (this.size > 0 && this.cells < this.subject.mostNodes && !this.isReached()) {
      if (budget.isSpent(this.work)) return false;
      this.work = 0;
      this.cut(this.pop());
    }
    return true;
  }

  private isReached(): boolean {
    const { allowance, asked, finer } = this.tolerances;
    const least = this.leastBound();
    const open = allowance !== undefined && this.best >= allowance && least < allowance - finer;
    return least >= this.best - toleranceAt(this.best, open || this.cells < FINE_NODES ? finer : asked);
  }

  private cut(node: number): void {
    const at = node * NODE_ROW;
    const { rows } = this.nodes;
    const cut = rows[at + NODE.cut];
    if (cut === Cut.Part) {
      this.subject.cut(this.nodes, node, this.lookAt);
      return;
    }
    const first = this.poses.half(rows[at]!, cut === Cut.Arm ? "arm" : "steer");
    const twin = this.nodes.copy(node);
    this.nodes.rows[at] = first;
    this.nodes.rows[twin * NODE_ROW] = first + 1;
    this.look(node);
    this.look(twin);
  }

  /** Bounds a node and keeps it unless it is ruled out. */
  private look(node: number): void {
    this.cells++;
    const { nodes, poses, said, subject } = this;
    this.work += subject.work.bound;
    const cell = nodes.rows[node * NODE_ROW]!;
    const known = poses.known[cell]!;
    if (known & Known.Passed) nodes.drop(node);
    else if (known & Known.Moves && subject.bound(said, poses, cell, nodes, node)) {
      this.takeMiddle(cell);
      this.keep(node, Math.max(said.bound, this.floor), said.cut);
    } else this.lookAtBorder(node, cell);
  }

  /** Bounds a node from a pose amid the border of reach. */
  private lookAtBorder(node: number, cell: number): void {
    const { nodes, poses, said, subject } = this;
    const known = poses.lookAtLimits(cell) | poses.lookAtBorder(cell);
    if (known & (Known.Passed | Known.Empty) || poses.isOtherEmpty(cell)) {
      nodes.drop(node);
      return;
    }
    this.cells += subject.borderNodes - 1;
    this.work += subject.work.border;
    if (poses.stands(cell)) {
      const at = cell * CELL_OF_POSES_ROW;
      const way = known & Known.Bounded ? borderWay(poses.rows, at, subject.ring.ballRadius) : 0;
      const coarse = Math.max(COARSE_SHARE * way, coarseAt(this.best));
      said.value = subject.gap(poses.rows, at + CELL_OF_POSES.pose, this.best, coarse);
      this.takeMiddle(cell);
    }
    said.bound = Number.NEGATIVE_INFINITY;
    if (known & Known.Bounded) {
      this.border.take(poses, cell);
      said.bound = this.boundTurned(node);
    }
    const { bound, cut } = said;
    if (bound === Number.NEGATIVE_INFINITY) this.pushUnknown(node);
    else if (bound >= this.best) nodes.drop(node);
    // Where the wheel moves evenly in the end, the tolerance itself can be reached.
    else if (known & Known.Moves && known & Known.OtherStands) this.push(node, bound, cut);
    else if (this.isNear(bound)) this.settle(node, bound);
    else if (this.isBelow(cell, FINEST_SHARE)) this.giveUp(node);
    else this.push(node, bound, cut);
  }

  /**
   * Bounds a node over all poses of `border`, those first whose turn about the steering axis makes it loosest: halves that
   * turn as long as it is most of what is loose, and may do. @returns the least over all of its parts
   */
  private boundTurned(node: number): number {
    const { border, parts, said } = this;
    parts.count = 0;
    this.boundPart(node, 0, border.spin);
    const { cut } = said;
    for (let more = MOST_TURNS; more > 0; more--) {
      const worst = parts.worst();
      const half = parts.half[worst]!;
      if (this.isNear(parts.bound[worst]!) || half < border.tilt || !this.isNear(parts.value[worst]!)) break;
      const middle = parts.middle[worst]!;
      parts.drop(worst);
      this.work += 2 * this.subject.work.border;
      this.boundPart(node, middle - 0.5 * half, 0.5 * half);
      this.boundPart(node, middle + 0.5 * half, 0.5 * half);
    }
    said.cut = cut;
    return parts.bound[parts.worst()]!;
  }

  private boundPart(node: number, middle: number, half: number): void {
    const { border, nodes, said, subject } = this;
    border.put(middle, half);
    said.bound = Number.NEGATIVE_INFINITY;
    said.value = Number.NEGATIVE_INFINITY;
    const aim = this.best - toleranceAt(this.best, this.tolerances.border);
    subject.boundAtBorder(said, border, nodes, node, this.best, aim);
    this.parts.add(middle, half, said.bound, said.value);
  }

  /** Only a pose that both wheels can take and that keeps every limit counts; a bound over more poses still holds. */
  private takeMiddle(cell: number): void {
    const { value } = this.said;
    if (!(value < this.best && this.poses.isPose(cell))) return;
    const at = cell * CELL_OF_POSES_ROW;
    this.offer(value, this.poses.rows[at]!, this.poses.rows[at + CELL_OF_POSES.steer]!);
  }

  /** What becomes of a node bounded over poses whose motion is proven. Looks at the limits. @param cut to be done next */
  private keep(node: number, bound: number, cut: Cut): void {
    const cell = this.nodes.rows[node * NODE_ROW]!;
    if (bound >= this.best) {
      this.nodes.drop(node);
      return;
    }
    const known = this.poses.lookAtLimits(cell);
    const stands = (known & Known.OtherStands) !== 0;
    if (known & Known.Passed || (!stands && this.poses.isOtherEmpty(cell))) this.nodes.drop(node);
    else if (stands && known & Known.Kept) this.push(node, bound, cut);
    else if ((!stands && this.isNear(bound)) || this.isBelow(cell, stands ? LIMIT_SHARE : FINEST_SHARE))
      this.settle(node, bound);
    else this.push(node, bound, cut);
  }

  /** Keeps a node of which nothing is known, until it is small: the wider of its ranges is cut next. */
  private pushUnknown(node: number): void {
    const cell = this.nodes.rows[node * NODE_ROW]!;
    if (this.isBelow(cell, LEAST_SHARE)) this.giveUp(node);
    else this.push(node, Number.NEGATIVE_INFINITY, this.widerCut(cell));
  }

  private widerCut(cell: number): Cut {
    const { rows } = this.poses;
    const at = cell * CELL_OF_POSES_ROW;
    const arm = rows[at + CELL_OF_POSES.armHalf]! * this.steerRange;
    return arm > rows[at + CELL_OF_POSES.steerHalf]! * this.armRange ? Cut.Arm : Cut.Steer;
  }

  /** Within the tolerance at the border of reach. */
  private isNear(bound: number): boolean {
    return Math.max(bound, this.floor) >= this.best - toleranceAt(this.best, this.tolerances.border);
  }

  private isBelow(cell: number, share: number): boolean {
    const { rows } = this.poses;
    const at = cell * CELL_OF_POSES_ROW;
    return (
      rows[at + CELL_OF_POSES.armHalf]! <= share * this.armRange &&
      rows[at + CELL_OF_POSES.steerHalf]! <= share * this.steerRange
    );
  }
}

/** Parts of a turn about the steering axis with their bounds. */
class TurnParts {
  count = 0;
  readonly middle: Float64Array;
  readonly half: Float64Array;
  readonly bound: Float64Array;
  readonly value: Float64Array;

  constructor(most: number) {
    this.middle = new Float64Array(most);
    this.half = new Float64Array(most);
    this.bound = new Float64Array(most);
    this.value = new Float64Array(most);
  }

  add(middle: number, half: number, bound: number, value: number): void {
    this.middle[this.count] = middle;
    this.half[this.count] = half;
    this.bound[this.count] = bound;
    this.value[this.count++] = value;
  }

  /** The one of the least bound. */
  worst(): number {
    let worst = 0;
    for (let i = 1; i < this.count; i++) if (this.bound[i]! < this.bound[worst]!) worst = i;
    return worst;
  }

  drop(part: number): void {
    const last = --this.count;
    for (const row of [this.middle, this.half, this.bound, this.value]) row[part] = row[last]!;
  }
}
