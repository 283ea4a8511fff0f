import { CELL, CELL_ROW, CellKind, splitCell } from "../../gaps/cells/cells.ts";
import { BOX_ROW, TRIANGLE_ROW, type TriangleTree } from "../../gaps/mesh/triangleTree.ts";

/** What a node is cut across next. */
export const Cut = { Part: 0, Arm: 1, Steer: 2 } as const;
export type Cut = (typeof Cut)[keyof typeof Cut];

/** In place of a node of the part's tree: the node is one cell of the part, or all of the part. */
export const NO_TREE = -1;
export const WHOLE = -2;

/** A node of the search: a cell of poses, what of the part (a node of its tree, or the above), a `Cut`, a cell. */
export const NODE = {
  poses: 0,
  tree: 1,
  cut: 2,
  cell: 3,
  /** In place of `tree` and `cell`: which rod, and the fractions of it, or of a spring or shock, between which a piece lies. */
  rod: 1,
  near: 3,
  far: 4,
} as const;
export const NODE_ROW = 3 + CELL_ROW;

/** The nodes of a search in one block of rows; numbers of dropped ones are given out again. */
export class Nodes {
  rows = new Float64Array(1024 * NODE_ROW);
  private count = 0;
  private free = new Int32Array(1024);
  private freed = 0;

  /** @returns a number whose row is free to fill; `rows` may be another block after it. */
  claim(): number {
    if (this.freed > 0) return this.free[--this.freed]!;
    if ((this.count + 1) * NODE_ROW > this.rows.length) {
      const larger = new Float64Array(this.rows.length * 2);
      larger.set(this.rows);
      this.rows = larger;
    }
    return this.count++;
  }

  drop(node: number): void {
    if (this.freed === this.free.length) {
      const larger = new Int32Array(this.free.length * 2);
      larger.set(this.free);
      this.free = larger;
    }
    this.free[this.freed++] = node;
  }

  /** @returns a new node with the same row. */
  copy(node: number): number {
    const twin = this.claim();
    const at = node * NODE_ROW;
    this.rows.copyWithin(twin * NODE_ROW, at, at + NODE_ROW);
    return twin;
  }

  /** Cuts a node's cell in two; one half stays in its place. @returns the other. */
  cut(node: number): number {
    const twin = this.copy(node);
    const a = node * NODE_ROW + NODE.cell;
    splitCell(this.rows, a, this.rows, a, twin * NODE_ROW + NODE.cell);
    return twin;
  }

  /** Halves the piece of a rod, a spring or a shock; the near half stays in its place. @returns the other. */
  halve(node: number): number {
    const twin = this.copy(node);
    const at = node * NODE_ROW;
    const middle = 0.5 * (this.rows[at + NODE.near]! + this.rows[at + NODE.far]!);
    this.rows[at + NODE.far] = middle;
    this.rows[twin * NODE_ROW + NODE.near] = middle;
    return twin;
  }

  /** Makes a node a cell of a part, a row at `from`. */
  setCell(node: number, cells: Float64Array, from: number): void {
    const at = node * NODE_ROW;
    this.rows[at + NODE.tree] = NO_TREE;
    for (let i = 0; i < CELL_ROW; i++) this.rows[at + NODE.cell + i] = cells[from + i]!;
  }

  /** Makes a node a tree's node: its box stands for all triangles below it. */
  setTree(node: number, tree: TriangleTree, treeNode: number): void {
    const at = node * NODE_ROW;
    this.rows[at + NODE.tree] = treeNode;
    this.rows[at + NODE.cell] = CellKind.Box;
    for (let i = 0; i < BOX_ROW; i++) this.rows[at + NODE.cell + 1 + i] = tree.boxes[treeNode * BOX_ROW + i]!;
    this.rows[at + NODE.cell + CELL.radius] = 0;
  }

  /** Makes a node one triangle of a tree. */
  setTriangle(node: number, tree: TriangleTree, triangle: number): void {
    const at = node * NODE_ROW;
    this.rows[at + NODE.tree] = NO_TREE;
    this.rows[at + NODE.cell] = CellKind.Triangle;
    for (let i = 0; i < TRIANGLE_ROW; i++)
      this.rows[at + NODE.cell + 1 + i] = tree.corners[triangle * TRIANGLE_ROW + i]!;
    this.rows[at + NODE.cell + CELL.radius] = 0;
  }

  /** Puts the children of a node of the tree, or a leaf's triangles, in its place. @param look at each */
  openTree(tree: TriangleTree, node: number, look: (node: number) => void): void {
    const treeNode = this.rows[node * NODE_ROW + NODE.tree]!;
    const first = tree.links[2 * treeNode]!;
    const size = tree.links[2 * treeNode + 1]!;
    for (let i = 1; i < size; i++) {
      const twin = this.copy(node);
      this.setTriangle(twin, tree, first + i);
      look(twin);
    }
    if (size > 0) this.setTriangle(node, tree, first);
    else {
      const twin = this.copy(node);
      this.setTree(twin, tree, first);
      look(twin);
      this.setTree(node, tree, treeNode + 1);
    }
    look(node);
  }
}

/** What makes a bound looser than its value most. */
export function loosestCut({
  partShare,
  armShare,
  steerShare,
}: {
  readonly partShare: number;
  readonly armShare: number;
  readonly steerShare: number;
}): Cut {
  if (partShare >= armShare && partShare >= steerShare) return Cut.Part;
  return armShare >= steerShare ? Cut.Arm : Cut.Steer;
}
