import { boundCell, cellBound } from "../../gaps/cells/cellBound.ts";
import { type TriangleTree, triangleTree } from "../../gaps/mesh/triangleTree.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model/model.ts";
import { Budget } from "../numeric/budget.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known } from "../search/cellOfPoses.ts";
import { Cut, loosestCut, NODE, NODE_ROW, Nodes } from "../search/nodes.ts";
import { OtherWheel } from "../search/otherWheel.ts";
import { PoseCells } from "../search/poseCells.ts";
import { type EnvelopeRange, reachableTravel } from "./envelopeRange.ts";

/** What is proven of a surface. */
export interface ContainmentProof {
  /** Whether no point of the surface lies deeper than `deepest` in the ring at any pose of the range. */
  readonly proven: boolean;
  /** mm, 0 when the surface stays clear of the ring. Not proven: how deep a point was found, if one was. */
  readonly deepest: number;
  /** Cells of surface × poses looked at: what it cost. */
  readonly cells: number;
}

/** Cells looked at before it is given up. */
const MOST_CELLS = 40_000_000;
/** Microseconds, about, of a cell. */
const CELL_WORK = 1;
/** Cells of poses below this share of the range are not cut further: the border of reach is left unproven. */
const LEAST_SHARE = 1 / 4096;

const motion = new Float64Array(MOTION_ROW);
const found = cellBound();

/**
 * Proves that no point of a surface lies deeper than `allowed` mm in the ring at any pose of a continuous range
 * of travel and steer: cells of surface × poses are bounded by `boundCell`, as in a certified check, and cut
 * until the bound is good enough. Where the surface is closed and holds one pose's ring, it then holds the ring
 * at every pose but for that depth (see `public/docs/envelope.md`).
 * @param mesh left-hand frame of the side.
 * Not proven once the budget is spent.
 */
export function proveContainment(
  model: Model,
  side: Side,
  range: EnvelopeRange,
  mesh: TriangleMesh,
  allowed: number,
  budget: Budget = Budget.endless(),
): ContainmentProof {
  const travel = reachableTravel(model, range);
  if (travel === null) return { proven: true, deepest: 0, cells: 0 };
  const { frontEnd, ring } = model;
  const tree = triangleTree(mesh.positions, mesh.triangles);
  const poses = new PoseCells({
    side: frontEnd[side],
    other: new OtherWheel(frontEnd, side, model.mirrored),
    innerAt: side === "left" ? 0 : 3,
    steering: frontEnd.steering,
  });
  const nodes = new Nodes();
  const armLow = armAngleFor(frontEnd[side], travel.low);
  const armHalf = 0.5 * (armAngleFor(frontEnd[side], travel.high) - armLow);
  const steerHalf = 0.5 * (range.steerHigh - range.steerLow);
  const first = nodes.claim();
  nodes.rows[first * NODE_ROW] = poses.add(armLow + armHalf, armHalf, range.steerLow + steerHalf, steerHalf);
  nodes.setTree(first, tree, 0);
  const open = [first];
  let deepest = 0;
  let cells = 0;
  while (open.length > 0) {
    const node = open.pop()!;
    cells++;
    if (cells > MOST_CELLS || budget.isSpent(CELL_WORK)) return { proven: false, deepest: 0, cells };
    const at = node * NODE_ROW;
    const cell = nodes.rows[at]!;
    const poseAt = cell * CELL_OF_POSES_ROW;
    const armShareLeft = armHalf > 0 ? poses.rows[poseAt + CELL_OF_POSES.armHalf]! / armHalf : 0;
    const steerShareLeft = steerHalf > 0 ? poses.rows[poseAt + CELL_OF_POSES.steerHalf]! / steerHalf : 0;
    const isPiece = nodes.rows[at + NODE.tree]! < 0;
    const moves = Known.Stands | Known.Moves;
    let cut: Cut = armShareLeft >= steerShareLeft ? Cut.Arm : Cut.Steer;
    if ((poses.known[cell]! & moves) === moves) {
      for (let i = 0; i < MOTION_ROW; i++) motion[i] = poses.rows[poseAt + CELL_OF_POSES.motion + i]!;
      boundCell(found, ring, poses.rows, poseAt + CELL_OF_POSES.wheel, nodes.rows, at + NODE.cell, motion);
      if (found.bound >= -allowed) {
        deepest = Math.max(deepest, -found.bound);
        nodes.drop(node);
        continue;
      }
      if (isPiece && found.value < -allowed && poses.known[cell]! & Known.OtherStands) {
        return { proven: false, deepest: -found.value, cells };
      }
      cut = loosestCut(found);
    } else if (poses.lookAtBorder(cell) & Known.Empty || poses.isOtherEmpty(cell)) {
      nodes.drop(node);
      continue;
    } else if (armShareLeft <= LEAST_SHARE && steerShareLeft <= LEAST_SHARE) {
      return { proven: false, deepest: 0, cells };
    }
    if (cut === Cut.Part) {
      if (isPiece) open.push(node, nodes.cut(node));
      else openTree(nodes, node, tree, open);
      continue;
    }
    const half = poses.half(cell, cut === Cut.Arm ? "arm" : "steer");
    const twin = nodes.copy(node);
    nodes.rows[node * NODE_ROW] = half;
    nodes.rows[twin * NODE_ROW] = half + 1;
    open.push(node, twin);
  }
  return { proven: true, deepest, cells };
}

/** Puts the children of a tree's node, or its triangles, in its place. */
function openTree(nodes: Nodes, node: number, tree: TriangleTree, open: number[]): void {
  const treeNode = nodes.rows[node * NODE_ROW + NODE.tree]!;
  const first = tree.links[2 * treeNode]!;
  const size = tree.links[2 * treeNode + 1]!;
  const twins = Math.max(1, size - 1);
  for (let i = 1; i <= twins && size !== 1; i++) {
    const twin = nodes.copy(node);
    if (size > 0) nodes.setTriangle(twin, tree, first + i);
    else nodes.setTree(twin, tree, first);
    open.push(twin);
  }
  if (size > 0) nodes.setTriangle(node, tree, first);
  else nodes.setTree(node, tree, treeNode + 1);
  open.push(node);
}
