import type { Budget } from "../numeric/budget.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "./cellOfPoses.ts";
import { toleranceAt } from "./deepTolerance.ts";
import { Frontier } from "./frontier.ts";
import { Cut, NODE, NODE_ROW } from "./nodes.ts";
import type { PoseCells } from "./poseCells.ts";

/** Share of the range below which a cell of poses of which nothing can be said is given up. */
const LEAST_SHARE = 2 ** -12;

/** …at which one is left where a limit may be passed in it or kept: less than a micron of travel… */
const LIMIT_SHARE = 2 ** -24;

/** …and at which rounding would take over, where a pose amid the border of reach bounds it. */
const FINEST_SHARE = 2 ** -39;

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
 * The best-first search: each node is a cell of poses × all or a piece of what is measured. A kind of subject says what a
 * node's bound is (`look`) and how its piece is cut (`cutPart`); what becomes of a bounded node is the same for all.
 */
export abstract class Search extends Frontier {
  /** What was done since the budget was asked last, in about microseconds. */
  protected work = 0;
  private readonly armRange: number;
  private readonly steerRange: number;

  /** @param poses its cell 0 is the range to search. @param floor no gap can be below this, mm. */
  constructor(
    protected readonly poses: PoseCells,
    floor: number,
    private readonly tolerances: Tolerances,
    private readonly mostNodes: number,
  ) {
    super(floor, tolerances.below);
    this.armRange = 2 * poses.rows[CELL_OF_POSES.armHalf]!;
    this.steerRange = 2 * poses.rows[CELL_OF_POSES.steerHalf]!;
  }

  /** Bounds a node and keeps it unless it is ruled out. */
  protected abstract look(node: number): void;

  /** Cuts the piece of a node in two or more and looks at each. */
  protected abstract cutPart(node: number): void;

  /**
   * Goes on from the nodes looked at so far until the tolerance is reached.
   * @returns false when the budget ended it.
   */
  protected goOn(budget: Budget): boolean {
    while (this.size > 0 && this.cells < this.mostNodes && !this.isReached()) {
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
      this.cutPart(node);
      return;
    }
    const first = this.poses.half(rows[at]!, cut === Cut.Arm ? "arm" : "steer");
    const twin = this.nodes.copy(node);
    this.nodes.rows[at] = first;
    this.nodes.rows[twin * NODE_ROW] = first + 1;
    this.look(node);
    this.look(twin);
  }

  /** What becomes of a node bounded over poses whose motion is proven. Looks at the limits. @param cut to be done next */
  protected keep(node: number, bound: number, cut: Cut): void {
    const poses = this.nodes.rows[node * NODE_ROW]!;
    if (bound >= this.best) {
      this.nodes.drop(node);
      return;
    }
    const known = this.poses.lookAtLimits(poses);
    const stands = (known & Known.OtherStands) !== 0;
    if (known & Known.Passed || (!stands && this.poses.isOtherEmpty(poses))) this.nodes.drop(node);
    else if (stands && known & Known.Kept) this.push(node, bound, cut);
    else if ((!stands && this.isNear(bound)) || this.isBelow(poses, stands ? LIMIT_SHARE : FINEST_SHARE))
      this.settle(node, bound);
    else this.push(node, bound, cut);
  }

  /** What becomes of one bounded from a pose amid the border of reach. */
  protected keepOnBorder(node: number, bound: number, cut: Cut): void {
    if (bound >= this.best) this.nodes.drop(node);
    else if (this.isNear(bound)) this.settle(node, bound);
    else if (this.isBelow(this.nodes.rows[node * NODE_ROW]!, FINEST_SHARE)) this.giveUp(node);
    else this.push(node, bound, cut);
  }

  /** Keeps a node of which nothing is known, until it is small: the wider of its ranges is cut next. */
  protected pushUnknown(node: number): void {
    const poses = this.nodes.rows[node * NODE_ROW]!;
    if (this.isBelow(poses, LEAST_SHARE)) this.giveUp(node);
    else this.push(node, Number.NEGATIVE_INFINITY, this.widerCut(poses));
  }

  protected widerCut(poses: number): Cut {
    const { rows } = this.poses;
    const at = poses * CELL_OF_POSES_ROW;
    const arm = rows[at + CELL_OF_POSES.armHalf]! * this.steerRange;
    return arm > rows[at + CELL_OF_POSES.steerHalf]! * this.armRange ? Cut.Arm : Cut.Steer;
  }

  /** Within the tolerance at the border of reach. */
  private isNear(bound: number): boolean {
    return Math.max(bound, this.floor) >= this.best - toleranceAt(this.best, this.tolerances.border);
  }

  private isBelow(poses: number, share: number): boolean {
    const { rows } = this.poses;
    const at = poses * CELL_OF_POSES_ROW;
    return (
      rows[at + CELL_OF_POSES.armHalf]! <= share * this.armRange &&
      rows[at + CELL_OF_POSES.steerHalf]! <= share * this.steerRange
    );
  }
}
