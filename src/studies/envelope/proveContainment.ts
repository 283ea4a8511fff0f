import { boundCell, cellBound } from "../../gaps/cellBound.ts";
import { partShapeOf } from "../../gaps/partShape.ts";
import { MOTION_ROW } from "../../geometry/motionRow.ts";
import type { TriangleMesh } from "../../geometry/triangleMesh.ts";
import { armAngleFor } from "../../suspension/armAngle.ts";
import type { Side } from "../../suspension/frontEnd.ts";
import type { Model } from "../model.ts";
import { NODE, NODE_ROW, Nodes } from "../worst/nodes.ts";
import { CELL_OF_POSES, CELL_OF_POSES_ROW, Known, PoseCells } from "../worst/poseCells.ts";
import { type EnvelopeRange, reachableTravel } from "./envelopeRange.ts";

/** What is proven of a surface. */
export interface ContainmentProof {
  /**
   * mm. No point of the surface lies deeper than this in the ring at any pose of the range (0: none lies in it);
   * infinite when that could not be proven.
   */
  readonly deepest: number;
  /** Cells of surface × poses looked at: what it cost. */
  readonly cells: number;
}

/** Cells looked at before it is given up. */
const MOST_CELLS = 40_000_000;
/** Cells between two calls of `keepGoing`. */
const STRIDE = 4096;
/** Cells of poses below this share of the range are not cut further: the border of reach is left unproven. */
const LEAST_SHARE = 1 / 4096;

const motion = new Float64Array(MOTION_ROW);
const found = cellBound();

/**
 * Proves how deep a surface lies in the ring at any pose of a continuous range of travel and steer, to within
 * `allowed` mm: cells of surface × poses are bounded by `boundCell`, as in a certified check, and cut where the
 * bound is not good enough.
 * @param mesh left-hand frame of the side. @returns null when `keepGoing` said false.
 */
export function proveContainment(
  model: Model,
  side: Side,
  range: EnvelopeRange,
  mesh: TriangleMesh,
  allowed: number,
  keepGoing?: () => boolean,
): ContainmentProof | null {
  const travel = reachableTravel(model, range);
  if (travel === null) return { deepest: 0, cells: 0 };
  const { frontEnd, ring } = model;
  const part = partShapeOf({ name: "envelope", kind: "mesh", ...mesh }, false);
  const tree = part.tree!;
  const poses = new PoseCells({
    side: frontEnd[side],
    other: frontEnd[side === "left" ? "right" : "left"],
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
    if (cells > MOST_CELLS) return { deepest: Number.POSITIVE_INFINITY, cells };
    if (cells % STRIDE === 0 && keepGoing?.() === false) return null;
    const at = node * NODE_ROW;
    const cell = nodes.rows[at]!;
    const poseAt = cell * CELL_OF_POSES_ROW;
    const known = poses.known[cell]!;
    const isPiece = nodes.rows[at + NODE.tree]! < 0;
    let cut: "part" | "arm" | "steer" =
      poses.rows[poseAt + CELL_OF_POSES.armHalf]! * steerHalf >=
        poses.rows[poseAt + CELL_OF_POSES.steerHalf]! * armHalf && armHalf > 0
        ? "arm"
        : "steer";
    if (known & Known.Stands && known & Known.Moves) {
      for (let i = 0; i < MOTION_ROW; i++) motion[i] = poses.rows[poseAt + CELL_OF_POSES.motion + i]!;
      boundCell(found, ring, poses.rows, poseAt + CELL_OF_POSES.wheel, nodes.rows, at + NODE.cell, motion);
      if (found.bound >= -deepest - 0 && found.bound >= -allowed) {
        nodes.drop(node);
        continue;
      }
      if (found.bound >= -allowed) {
        deepest = Math.max(deepest, -found.bound);
        nodes.drop(node);
        continue;
      }
      if (isPiece && found.value < -allowed && known & Known.OtherStands) {
        // A pose of the range that is deeper than allowed: nothing to prove here.
        deepest = Math.max(deepest, -found.value);
        nodes.drop(node);
        continue;
      }
      const { partShare, armShare, steerShare } = found;
      cut =
        partShare >= armShare && partShare >= steerShare ? "part" : armShare >= steerShare ? "arm" : "steer";
    } else if (poses.lookAtBorder(cell) & Known.Empty || poses.isOtherEmpty(cell)) {
      nodes.drop(node);
      continue;
    } else if (
      poses.rows[poseAt + CELL_OF_POSES.armHalf]! <= LEAST_SHARE * armHalf &&
      poses.rows[poseAt + CELL_OF_POSES.steerHalf]! <= LEAST_SHARE * steerHalf
    ) {
      return { deepest: Number.POSITIVE_INFINITY, cells };
    }
    if (cut === "part") {
      if (isPiece) open.push(node, nodes.cut(node));
      else openTree(nodes, node, tree, open);
      continue;
    }
    const half = poses.half(cell, cut);
    const twin = nodes.copy(node);
    nodes.rows[node * NODE_ROW] = half;
    nodes.rows[twin * NODE_ROW] = half + 1;
    open.push(node, twin);
  }
  return { deepest, cells };
}

function openTree(nodes: Nodes, node: number, tree: { links: Int32Array }, open: number[]): void {
  const treeNode = nodes.rows[node * NODE_ROW + NODE.tree]!;
  const first = tree.links[2 * treeNode]!;
  const size = tree.links[2 * treeNode + 1]!;
  for (let i = 1; i < size; i++) {
    const twin = nodes.copy(node);
    nodes.setTriangle(twin, tree as never, first + i);
    open.push(twin);
  }
  if (size > 0) nodes.setTriangle(node, tree as never, first);
  else {
    const twin = nodes.copy(node);
    nodes.setTree(twin, tree as never, first);
    open.push(twin);
    nodes.setTree(node, tree as never, treeNode + 1);
  }
  open.push(node);
}
