import { cellBound } from "../../gaps/cells/cellBound.ts";
import { CELL } from "../../gaps/cells/cells.ts";
import { gapSlack } from "../../gaps/cells/tolerances.ts";
import { GAP_ROW } from "../../gaps/partGap.ts";
import type { RingShape } from "../../gaps/ring/ringShape.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import { POSE, POSE_ROW } from "../../suspension/poseRow.ts";
import { pairGapTo, type SpringOrShockPair } from "../model/pairs.ts";
import type { BorderPose } from "./borderPose.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW } from "./cellOfPoses.ts";
import { loosestCut, NODE, NODE_ROW, type Nodes } from "./nodes.ts";
import type { PoseCells } from "./poseCells.ts";
import { boundSpringOrShockPiece, lookAtSpringOrShock } from "./springOrShockBound.ts";
import type { Said, Subject } from "./subject.ts";

// Scratch: a search is not reentrant.
const found = cellBound();

/**
 * A spring or shock: each node is a cell of poses × a piece of it, bounded by `boundSpringOrShockPiece`. At the border of
 * reach no point of the ring and none of its line runs farther from where the border's pose has it than a proven path, and
 * a signed distance changes by no more than the two together: gap there less both paths bounds the cell.
 */
export class SpringOrShockSubject implements Subject {
  readonly ring: RingShape;
  readonly floor: number;
  readonly mostNodes = 400_000;
  readonly work = { bound: 3, border: 30, gap: 30 };
  readonly borderNodes = 1;
  readonly row = new Float64Array(GAP_ROW);
  private readonly pose = new Float64Array(POSE_ROW);
  private readonly motion = new Float64Array(MOTION_ROW);
  /** Number of the cell of poses whose pose and motion stand in `pose` and `motion`. */
  private moving = -1;

  constructor(private readonly pair: SpringOrShockPair) {
    this.ring = pair.ring;
    this.floor = -pair.ring.deepest - pair.part.cells[CELL.radius]!;
  }

  begin({ rows }: Nodes, node: number): void {
    rows[node * NODE_ROW + NODE.near] = 0;
    rows[node * NODE_ROW + NODE.far] = 1;
  }

  gap(pose: Float64Array, poseAt: number, beat: number, coarse: number): number {
    return pairGapTo(this.row, 0, this.pair, pose, poseAt, beat, coarse);
  }

  bound(out: Said, { rows }: PoseCells, cell: number, nodes: Nodes, node: number): boolean {
    const at = cell * CELL_OF_POSES_ROW;
    if (cell !== this.moving) {
      this.moving = cell;
      for (let i = 0; i < POSE_ROW; i++) this.pose[i] = rows[at + CELL_OF_POSES.pose + i]!;
      for (let i = 0; i < MOTION_ROW; i++) this.motion[i] = rows[at + CELL_OF_POSES.motion + i]!;
      lookAtSpringOrShock(this.pair, this.pose, this.motion);
    }
    const near = nodes.rows[node * NODE_ROW + NODE.near]!;
    const far = nodes.rows[node * NODE_ROW + NODE.far]!;
    boundSpringOrShockPiece(found, this.pair, this.pose, this.motion, near, far);
    out.value = found.value;
    out.bound = found.bound;
    out.cut = loosestCut(found);
    return true;
  }

  /**
   * All of it, whatever the piece, about the border's pose: what rides on the knuckle moves by slide + turn × its lever, a
   * mount on the arm on its circle.
   */
  boundAtBorder(out: Said, border: BorderPose, _nodes: Nodes, _node: number, best: number): void {
    const { lower } = this.pair.springOrShock;
    const ring = border.lever(border.pose, POSE.wheelCenter) + this.ring.ballRadius;
    const mount = lower.on === "lowerArm" ? 0 : Math.hypot(...lower.point);
    const own = lower.on === "lowerArm" ? lower.radius * border.armHalf : border.slide;
    const path = border.way(ring + mount) + own + gapSlack(Math.max(best, this.floor));
    out.bound = pairGapTo(this.row, 0, this.pair, border.pose, 0, best + path) - path;
    out.value = out.bound + border.spinWay(ring + mount);
    out.cut = border.cut(ring + mount);
  }

  cut(nodes: Nodes, node: number, look: (node: number) => void): void {
    const twin = nodes.halve(node);
    look(node);
    look(twin);
  }
}
