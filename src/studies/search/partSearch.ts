import { boundCell, cellBound } from "../../gaps/cells/cellBound.ts";
import { CELL, CELL_ROW, cellReach } from "../../gaps/cells/cells.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import type { Budget } from "../numeric/budget.ts";
import { borderCut, borderWay, leverTo, movesEvenly } from "./borderWay.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "./cellOfPoses.ts";
import { coarseAt } from "./deepTolerance.ts";
import { Cut, loosestCut, NO_TREE, NODE, NODE_ROW, WHOLE } from "./nodes.ts";
import type { PartAtPose } from "./partAtPose.ts";
import type { PoseCells } from "./poseCells.ts";
import { Search, type Tolerances } from "./search.ts";

/** Nodes after which the search stops and reports the bound it has reached: a few seconds of work. */
const MOST_NODES = 1_000_000;

/** What a look at the whole part counts for: its gap at a pose costs about as much as this many bounds. */
const WHOLE_COST = 20;

/** Microseconds, about: a bound; a gap of the whole part, which a solid pressed deep makes long. */
const BOUND_WORK = 2;
const WHOLE_WORK = 500;

/** Share of the wheel's way over a cell at the border of reach that the gap in its middle may be off by. */
const COARSE_SHARE = 0.1;

// Scratch: a search is not reentrant.
const motion = new Float64Array(MOTION_ROW);
const found = cellBound();

/**
 * The search of a part that stands still: each node is a cell of poses × the part, or a node of its tree, or a cell of
 * it. The whole part is cut into pieces once the wheel's motion is proven over the cell of poses; pieces are bounded by
 * `boundCell`, and of range of arm, range of steer and extent the one that makes the bound loosest is cut.
 */
export class PartSearch extends Search {
  /** Which cells of the part the whole of it is cut into, as far as the search has come. */
  private pieces: Int32Array = new Int32Array(0);
  /** Number of the cell of poses whose motion stands in `motion`. */
  private moving = -1;

  /** @param poses its cell 0 is the range to search. */
  constructor(
    poses: PoseCells,
    private readonly subject: PartAtPose,
    tolerances: Tolerances,
  ) {
    super(poses, -subject.ring.deepest - subject.radius, tolerances, MOST_NODES);
  }

  /**
   * Searches the whole range. @param pieces numbers of the part's cells to look at; a part with a tree needs none.
   * @returns false when the budget ended it.
   */
  run(pieces: Int32Array, budget: Budget): boolean {
    this.pieces = pieces;
    const root = this.claimRoot();
    this.nodes.rows[root * NODE_ROW] = 0;
    this.nodes.rows[root * NODE_ROW + NODE.tree] = WHOLE;
    this.look(root);
    return this.goOn(budget);
  }

  protected look(node: number): void {
    this.cells++;
    this.work += BOUND_WORK;
    const poses = this.nodes.rows[node * NODE_ROW]!;
    const isWhole = this.nodes.rows[node * NODE_ROW + NODE.tree] === WHOLE;
    // Of a piece the bound costs less than its limits, and may do.
    const known = isWhole ? this.poses.lookAtLimits(poses) : this.poses.known[poses]!;
    if (known & Known.Passed) this.nodes.drop(node);
    else if (isWhole) {
      if (known & Known.Moves && this.isEven(poses)) this.takeApart(node);
      else this.lookAtWhole(node, poses);
    } else if (known & Known.Moves) this.lookAtPiece(node, poses);
    else this.lookAtPieceOnBorder(node, poses);
  }

  /** A piece over a cell of poses whose motion is proven. */
  private lookAtPiece(node: number, poses: number): void {
    const { rows } = this.nodes;
    const cell = node * NODE_ROW + NODE.cell;
    const poseAt = poses * CELL_OF_POSES_ROW;
    if (poses !== this.moving) {
      this.moving = poses;
      for (let i = 0; i < MOTION_ROW; i++) motion[i] = this.poses.rows[poseAt + CELL_OF_POSES.motion + i]!;
    }
    boundCell(found, this.subject.ring, this.poses.rows, poseAt + CELL_OF_POSES.wheel, rows, cell, motion);
    // Only a pose that both wheels can take counts as found, and only a point of the part: a tree's box has none.
    if (found.value < this.best && rows[node * NODE_ROW + NODE.tree] === NO_TREE)
      if (this.poses.isPose(poses)) this.keepFound(poseAt, rows[cell + CELL.radius]!);
    this.keep(node, Math.max(found.bound, this.floor), loosestCut(found));
  }

  /** A piece over a cell of poses at the border of reach, within one whose motion was proven: seldom. */
  private lookAtPieceOnBorder(node: number, poses: number): void {
    const known = this.poses.lookAtLimits(poses) | this.poses.lookAtBorder(poses);
    const { rows } = this.poses;
    const poseAt = poses * CELL_OF_POSES_ROW;
    if (known & (Known.Empty | Known.Passed) || this.poses.isOtherEmpty(poses)) this.nodes.drop(node);
    else if (known & Known.Bounded) {
      const cell = node * NODE_ROW + NODE.cell;
      const { ring } = this.subject;
      boundCell(found, ring, rows, poseAt + CELL_OF_POSES.borderWheel, this.nodes.rows, cell, null);
      const [x, y, z] = found.center as unknown as [number, number, number];
      const lever = leverTo(rows, poseAt, found.center, 0) + cellReach(this.nodes.rows, cell, x, y, z);
      const way = borderWay(rows, poseAt, lever);
      const cut = found.value - found.bound > way ? Cut.Part : borderCut(rows, poseAt, lever);
      this.keepOnBorder(node, found.bound - way, cut);
    } else this.pushUnknown(node);
  }

  /**
   * All of the part over a cell of poses at the border of reach: its gap at a pose amid the cell, less the way of the
   * wheel. A point at distance ρ from the lower ball joint has a gap of ρ − c or more, c from that joint across the
   * ring, and loses slide + turn·ρ: with gap G found at that pose, no point has less than G − slide − turn·(G + c).
   */
  private lookAtWhole(node: number, poses: number): void {
    this.cells += WHOLE_COST - 1;
    this.work += WHOLE_WORK;
    const known = this.poses.lookAtBorder(poses);
    if (known & Known.Empty || this.poses.isOtherEmpty(poses)) {
      this.nodes.drop(node);
      return;
    }
    const { rows } = this.poses;
    const poseAt = poses * CELL_OF_POSES_ROW;
    const { subject } = this;
    const slide = rows[poseAt + CELL_OF_POSES.slide]!;
    const turn = rows[poseAt + CELL_OF_POSES.turn]!;
    const isBounded = known & Known.Bounded && turn < 1;
    const wheel = poseAt + CELL_OF_POSES.borderWheel;
    const across = isBounded
      ? leverTo(rows, poseAt, rows, wheel) + subject.ring.ballRadius + subject.radius
      : 0;
    // How deep a part is pressed in is dear to know: no nearer than a share of what the wheel's way takes off anyway.
    const coarse = isBounded ? COARSE_SHARE * borderWay(rows, poseAt, across) : 0;
    if (this.poses.stands(poses)) {
      const gap = subject.gap(
        rows,
        poseAt + CELL_OF_POSES.wheel,
        this.best,
        Math.max(coarse, coarseAt(this.best)),
      );
      if (gap < this.best && this.poses.isPose(poses))
        this.offer(subject.row, rows[poseAt]!, rows[poseAt + CELL_OF_POSES.steer]!);
    }
    if (!isBounded) {
      this.pushUnknown(node);
      return;
    }
    // A gap of this much at that pose is enough: none in the cell is then below the best.
    const needed = (this.best + slide + turn * across) / (1 - turn);
    const enough = needed + subject.slack(needed, coarse);
    const gap = subject.gap(rows, wheel, enough, coarse);
    const sure = gap - subject.slack(gap, coarse);
    const bound = sure - borderWay(rows, poseAt, sure + across);
    const cut = borderCut(rows, poseAt, gap + across);
    if (gap >= enough) this.nodes.drop(node);
    // Where the wheel moves evenly in the end, the tolerance itself can be reached.
    else if (known & Known.Moves && known & Known.OtherStands) this.push(node, bound, cut);
    else this.keepOnBorder(node, bound, cut);
  }

  /** Whether pieces of the part can be bounded well: near the border of reach no speed does that. */
  private isEven(poses: number): boolean {
    const known = this.poses.lookAtBorder(poses);
    if (!(known & Known.Bounded)) return !(known & Known.Empty);
    return movesEvenly(this.poses.rows, poses * CELL_OF_POSES_ROW, this.subject.ring.ballRadius);
  }

  private keepFound(poseAt: number, radius: number): void {
    this.best = found.value;
    this.bestArm = this.poses.rows[poseAt]!;
    this.bestSteer = this.poses.rows[poseAt + CELL_OF_POSES.steer]!;
    for (let i = 0; i < 3; i++) {
      this.bestPoint[i] = found.center[i]! - radius * found.away[i]!;
      this.bestPoint[3 + i] = found.center[i]! - found.distance * found.away[i]!;
    }
  }

  protected cutPart(node: number): void {
    if (this.nodes.rows[node * NODE_ROW + NODE.tree] !== NO_TREE) {
      this.openTree(node);
      return;
    }
    const twin = this.nodes.cut(node);
    this.look(node);
    this.look(twin);
  }

  /** Puts the pieces of the part in the place of the whole. */
  private takeApart(node: number): void {
    const { tree, cells } = this.subject.part;
    if (tree !== undefined) {
      this.nodes.setTree(node, tree, 0);
      this.look(node);
      return;
    }
    for (let i = 0; i < this.pieces.length; i++) {
      const piece = this.nodes.copy(node);
      this.nodes.setCell(piece, cells, this.pieces[i]! * CELL_ROW);
      this.look(piece);
    }
    this.nodes.drop(node);
  }

  /** Puts the children of a node of the tree, or a leaf's triangles, in its place. */
  private openTree(node: number): void {
    const tree = this.subject.part.tree!;
    const treeNode = this.nodes.rows[node * NODE_ROW + NODE.tree]!;
    const first = tree.links[2 * treeNode]!;
    const size = tree.links[2 * treeNode + 1]!;
    for (let i = 1; i < size; i++) {
      const twin = this.nodes.copy(node);
      this.nodes.setTriangle(twin, tree, first + i);
      this.look(twin);
    }
    if (size > 0) this.nodes.setTriangle(node, tree, first);
    else {
      const twin = this.nodes.copy(node);
      this.nodes.setTree(twin, tree, first);
      this.look(twin);
      this.nodes.setTree(node, tree, treeNode + 1);
    }
    this.look(node);
  }
}
