import { boundCell, cellBound } from "../../gaps/cells/cellBound.ts";
import { GAP, GAP_ROW } from "../../gaps/cells/cellSearch.ts";
import { CELL, CELL_ROW, CellKind, cellReach } from "../../gaps/cells/cells.ts";
import { gapSlack } from "../../gaps/cells/tolerances.ts";
import { mayHoldCircle, partGapTo } from "../../gaps/partGap.ts";
import type { PartShape } from "../../gaps/partShape.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE } from "../../suspension/poseRow.ts";
import type { BorderPose } from "./borderPose.ts";
import { COARSE_SHARE, movesEvenly } from "./borderWay.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW } from "./cellOfPoses.ts";
import { toleranceAt } from "./deepTolerance.ts";
import { Cut, loosestCut, NO_TREE, NODE, NODE_ROW, type Nodes, WHOLE } from "./nodes.ts";
import type { PoseCells } from "./poseCells.ts";
import type { Said, Subject } from "./subject.ts";

// Scratch: a search is not reentrant.
const motion = new Float64Array(MOTION_ROW);
const found = cellBound();

/**
 * A part that stands still: each node is a cell of poses × the part, or a node of its tree, or a cell of it. The whole part
 * is cut into pieces once the wheel's motion is proven over the cell of poses; pieces are bounded by `boundCell`, and of
 * range of arm, range of steer and extent the one that makes the bound loosest is cut.
 */
export class PartSubject implements Subject {
  readonly floor: number;
  readonly mostNodes = 1_000_000;
  readonly work = { bound: 2, border: 500, gap: 250 };
  readonly borderNodes = 20;
  readonly row = new Float64Array(GAP_ROW);
  /** Which cells of the part the whole of it is cut into; a part with a tree needs none. */
  private pieces: readonly number[];
  /** mm. Largest radius about the part's cells. */
  private readonly radius: number;
  /** The cell of poses whose motion stands in `motion`. */
  private moving = -1;

  constructor(
    readonly ring: RingShape,
    private readonly part: PartShape,
  ) {
    this.radius = radiusAbout(part);
    this.floor = -ring.deepest - this.radius;
    this.pieces = this.cellsWhere((kind) => kind !== CellKind.Solid);
  }

  begin(nodes: Nodes, node: number): void {
    nodes.rows[node * NODE_ROW + NODE.tree] = WHOLE;
  }

  gap(pose: Float64Array, poseAt: number, beat: number, coarse: number): number {
    return partGapTo(this.row, 0, this.ring, pose, poseAt + POSE.wheelCenter, this.part, beat, coarse);
  }

  /**
   * Goes on with the inside of boxes, where that can tell more than their faces: where these are hit, or where a box holds
   * the whole ring. @param best the least gap found, of which `row` tells; null = there is no point of the ring to tell by.
   * @returns whether there is any
   */
  goOnInside(best: number | null): boolean {
    const { cells } = this.part;
    const solids = this.cellsWhere(
      (kind, at) => kind === CellKind.Solid && mayHoldCircle(cells, at, this.ring),
    );
    if (solids.length === 0) return false;
    if (best !== null && best >= 0 && !solids.some((solid) => this.holdsRing(solid))) return false;
    this.pieces = solids;
    return true;
  }

  bound(out: Said, poses: PoseCells, cell: number, nodes: Nodes, node: number): boolean {
    const { ring } = this;
    const tree = nodes.rows[node * NODE_ROW + NODE.tree];
    if (tree === WHOLE) {
      if (!movesEvenly(poses, cell, ring.ballRadius)) return false;
      out.value = Number.POSITIVE_INFINITY;
      out.bound = Number.NEGATIVE_INFINITY;
      out.cut = Cut.Part;
      return true;
    }
    const at = node * NODE_ROW + NODE.cell;
    const poseAt = cell * CELL_OF_POSES_ROW;
    if (cell !== this.moving) {
      this.moving = cell;
      for (let i = 0; i < MOTION_ROW; i++) motion[i] = poses.rows[poseAt + CELL_OF_POSES.motion + i]!;
    }
    boundCell(found, ring, poses.rows, poseAt + CELL_OF_POSES.wheel, nodes.rows, at, motion);
    // Only a point of the part counts as found: a tree's box has none.
    out.value = tree === NO_TREE ? found.value : Number.POSITIVE_INFINITY;
    out.bound = found.bound;
    out.cut = loosestCut(found);
    return true;
  }

  boundAtBorder(out: Said, border: BorderPose, nodes: Nodes, node: number, best: number): void {
    if (nodes.rows[node * NODE_ROW + NODE.tree] === WHOLE) this.wholeAtBorder(out, border, best);
    else this.pieceAtBorder(out, border, nodes, node);
  }

  cut(nodes: Nodes, node: number, look: (node: number) => void): void {
    const { tree } = this.part;
    const at = nodes.rows[node * NODE_ROW + NODE.tree]!;
    if (at === NO_TREE) {
      const twin = nodes.cut(node);
      look(node);
      look(twin);
    } else if (at === WHOLE) this.takeApart(nodes, node, look);
    else nodes.openTree(tree!, node, look);
  }

  /**
   * All of the part over a cell of poses at the border of reach: its gap at a pose amid the cell, less the way of the
   * wheel. A point at distance ρ from the lower ball joint has a gap of ρ − c or more, c from that joint across the
   * ring, and loses slide + turn·ρ: with gap G found at that pose, no point has less than G − slide − turn·(G + c).
   */
  private wholeAtBorder(out: Said, border: BorderPose, best: number): void {
    const { slide, turn } = border;
    if (!(turn < 1)) return;
    const across = border.lever(border.pose, POSE.wheelCenter) + this.ring.ballRadius + this.radius;
    // How deep a part is pressed in is dear to know: no nearer than a share of what is taken off anyway, or may be left open.
    const coarse = COARSE_SHARE * Math.max(border.way(across), toleranceAt(best, 0));
    // A gap of this much at that pose is enough: none in the cell is then below the best.
    const needed = (best + slide + turn * across) / (1 - turn);
    const enough = needed + coarse + gapSlack(needed);
    const gap = this.gap(border.pose, 0, enough, coarse);
    const sure = gap - coarse - gapSlack(gap);
    out.bound = gap >= enough ? Number.POSITIVE_INFINITY : sure - border.way(sure + across);
    out.value = out.bound + border.spinWay(sure + across);
    out.cut = border.cut(gap + across);
  }

  /** A piece over poses at the border of reach, within a cell whose motion was proven: seldom. */
  private pieceAtBorder(out: Said, border: BorderPose, { rows }: Nodes, node: number): void {
    const at = node * NODE_ROW + NODE.cell;
    boundCell(found, this.ring, border.pose, POSE.wheelCenter, rows, at, null);
    const [x, y, z] = found.center as unknown as [number, number, number];
    const lever = border.lever(found.center, 0) + cellReach(rows, at, x, y, z);
    const way = border.way(lever);
    out.bound = found.bound - way;
    out.value = out.bound + border.spinWay(lever);
    out.cut = found.value - found.bound > way ? Cut.Part : border.cut(lever);
  }

  /** Puts the pieces of the part in the place of the whole. */
  private takeApart(nodes: Nodes, node: number, look: (node: number) => void): void {
    const { tree, cells } = this.part;
    if (tree !== undefined) {
      nodes.setTree(node, tree, 0);
      look(node);
      return;
    }
    for (const cell of this.pieces) {
      const piece = nodes.copy(node);
      nodes.setCell(piece, cells, cell * CELL_ROW);
      look(piece);
    }
    nodes.drop(node);
  }

  /** Numbers of the part's cells of some kind; none of a part with a tree. */
  private cellsWhere(is: (kind: number, at: number) => boolean): readonly number[] {
    const { cells, count } = this.part;
    const all = Array.from({ length: count }, (_, cell) => cell);
    return all.filter((cell) => is(cells[cell * CELL_ROW]!, cell * CELL_ROW));
  }

  /** Whether a solid holds the ring point found: with clear faces, it then holds the whole ring. */
  private holdsRing(solid: number): boolean {
    const { cells } = this.part;
    const at = solid * CELL_ROW + CELL.data;
    return [0, 1, 2].every((i) => Math.abs(this.row[GAP.onRing + i]! - cells[at + i]!) < cells[at + 3 + i]!);
  }
}

/** mm. Largest radius about a part's cells. */
function radiusAbout({ cells, count }: PartShape): number {
  let radius = 0;
  for (let i = 0; i < count; i++) radius = Math.max(radius, cells[i * CELL_ROW + CELL.radius]!);
  return radius;
}
